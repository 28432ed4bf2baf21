"""The reminder to save the file grows with what would be lost, and sooner where a phone promises nothing."""

import itertools

import pytest

DAY = 24 * 60 * 60 * 1000
NOW = 1_790_000_000_000
ORDER = ["none", "quiet", "due", "urgent"]
KEPT = {"promised": True, "installed": True}
STAGE = """async ([unsaved, phone, now]) => {
  const { stageOf } = await import('/app/parts.js');
  return stageOf(unsaved, phone, now);
}"""


def stage(page, entries=0, photos=0, days=0.0, **phone):
    since = NOW - round(days * DAY) if entries + photos else None
    unsaved = {"entries": entries, "photos": photos, "since": since}
    return page.evaluate(STAGE, [unsaved, {**KEPT, **phone}, NOW])


@pytest.mark.parametrize(
    ("amount", "kept", "at_risk"),
    [
        pytest.param({}, "none", "none", id="nothing"),
        pytest.param({"entries": 1}, "quiet", "quiet", id="the first entry"),
        pytest.param({"entries": 14, "photos": 3, "days": 1.9}, "quiet", "quiet", id="below every threshold"),
        pytest.param({"entries": 15}, "quiet", "due", id="a third of a job"),
        pytest.param({"entries": 1, "photos": 4}, "quiet", "due", id="a few pictures"),
        pytest.param({"entries": 1, "days": 2}, "quiet", "due", id="two days"),
        pytest.param({"entries": 40}, "due", "due", id="a job"),
        pytest.param({"entries": 1, "photos": 12}, "due", "due", id="the pictures of two jobs"),
        pytest.param({"entries": 1, "days": 7}, "due", "urgent", id="a week"),
        pytest.param({"entries": 60}, "due", "urgent", id="more than a job"),
        pytest.param({"entries": 1, "photos": 16}, "due", "urgent", id="the pictures of three jobs"),
        pytest.param({"entries": 150}, "urgent", "urgent", id="several jobs"),
        pytest.param({"entries": 1, "photos": 45}, "urgent", "urgent", id="many pictures"),
        pytest.param({"entries": 1, "days": 21}, "urgent", "urgent", id="three weeks"),
    ],
)
def test_each_threshold_is_where_it_is_said_to_be(asked_page, amount, kept, at_risk):
    assert stage(asked_page, **amount) == kept
    assert stage(asked_page, **amount, promised=False) == at_risk
    assert stage(asked_page, **amount, installed=False) == at_risk


def test_it_is_urgent_before_a_browser_may_clear_a_page_that_is_not_on_the_home_screen(asked_page):
    # Seven days of use without a visit: webkit.org/blog/10218.
    assert stage(asked_page, entries=1, days=5, installed=False) == "urgent"


def test_more_at_stake_never_says_less(asked_page):
    amounts = [
        {"entries": entries, "photos": photos, "days": days}
        for entries, photos, days in itertools.product((1, 15, 45, 200), (0, 5, 20, 60), (0, 3, 8, 30))
    ]
    stages = {tuple(each.values()): ORDER.index(stage(asked_page, **each)) for each in amounts}
    for (less, low), (more, high) in itertools.product(stages.items(), stages.items()):
        if all(a <= b for a, b in zip(less, more, strict=True)):
            assert low <= high, (less, more)


def test_a_clock_that_was_set_back_does_not_count_against_the_person(asked_page):
    assert stage(asked_page, entries=1, days=-400) == "quiet"
