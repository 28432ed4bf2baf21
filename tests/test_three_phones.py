"""Two phones on line, a third off line, random work: afterwards all three show the same screens.

A few short walks in the ordinary run; SWAPTRAIL_LONG=1 takes ten seeds of 500 steps.
"""

import json

import pytest

from tests.long_runs import times
from tests.three_phones import Workshop

SEEDS, STEPS = times(3, 10), times(70, 500)
# Each says that something contradicts; of one contradiction only one stands on the screen of a job.
CARDS = {
    "stories-two-places",
    "stories-two-units",
    "stories-where",
    "stories-tests-title",
    "stories-closed-title",
    "stories-mixed-title",
    "stories-corrected-title",
    "stories-numbers-title",
}


@pytest.mark.parametrize("seed", range(SEEDS))
def test_after_random_work_of_three_all_show_the_same_and_settle_what_contradicts(tmp_path, seed):
    workshop = Workshop(tmp_path, seed)
    workshop.work(STEPS)
    workshop.heal()
    shown = all_alike(workshop)
    assert len(shown) > 4

    hands = workshop.hands[0]
    for job in sorted(name for name in shown if name.startswith("job ")):
        hands.turns_to(job.removeprefix("job "))
        hands.goes_on()
        settle_all(hands, workshop.dice.choice)
    workshop.heal()
    for name, screen in all_alike(workshop).items():
        assert not CARDS & {each["msg"] for each in messages(json.loads(screen))}, (name, hands.story)


def all_alike(workshop):
    """Return what the three phones show, which is the same."""
    first, *others = (workshop.screens(who) for who in range(3))
    for other in others:
        assert sorted(other) == sorted(first)
        assert [name for name in first if other[name] != first[name]] == [], workshop.world["story"]
    return first


def settle_all(hands, choose):
    """Settle what contradicts on the job that is looked at, each by one answer."""
    left = contradictions(hands.view)
    while left:
        assert_told_once(hands)
        hands.settles(choose)
        now = contradictions(hands.view)
        assert now < left, hands.story
        left = now


def contradictions(view):
    """Return how many contradictions the step of a job says that there are."""
    step = view["step"]
    if step["form"] != "contradiction":
        assert view["closed"] or not view["disputes"]
        return 0
    return step["progress"]["total"] if step["progress"] else 1


def assert_told_once(hands):
    """Both stories stand on one card, the only one of its job; no sentence counts what another sets aside."""
    view, step = hands.view, hands.view["step"]
    assert [each["msg"] for each in messages(view) if each["msg"] in CARDS] == [step["title"]["msg"]]
    stories = [json.dumps(each, sort_keys=True) for each in step["expects"]["stories"]]
    assert len(set(stories)) == len(stories) > 1, hands.story
    reasoning = view["reasoning"] or {"aside": [], "carries_words": ""}
    aside = {each["args"]["test"] for each in reasoning["aside"]}
    assert numbers_in(step["expects"]["waits"]) <= aside
    assert not numbers_in(reasoning["carries_words"]) & aside
    points = [point for line in view["trail"]["lines"] for point in line["points"]]
    assert not {point["mark"] for point in points if str(point["test"] + 1) in aside} & {"fault", "clean"}
    for unit in view["disputes"]:
        settle = hands.driver.core("unit", unit=unit["id"])["settle"]
        assert numbers_in(settle["waits"] if settle else "") <= aside


def numbers_in(told):
    """Return the numbers of the tests that a message names."""
    args = told["args"] if told else {}
    return {args["test"]} if "test" in args else set(args.get("tests", {"of": ()})["of"])


def messages(value):
    """Return every message in a view."""
    if isinstance(value, list):
        return [each for item in value for each in messages(item)]
    if not isinstance(value, dict):
        return []
    found = [value] if "msg" in value else []
    return found + [each for item in value.values() for each in messages(item)]


def test_the_third_really_works_off_line(tmp_path):
    """What is compared afterwards was not the same all along: the phones did differ on the way."""
    workshop = Workshop(tmp_path, 1)
    differed = 0
    for _ in range(20):
        workshop.work(2)
        differed += workshop.hands[2].phone.unsent() > 0
    assert differed > 5
