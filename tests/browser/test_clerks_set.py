"""A few of the clerk's set at a counter, by camera and hand scanner; `tests.bench.clerk` takes all of it."""

from tests.bench.clerk import run

# Those ways that no other test of the counter's screens goes.
WAYS = [
    "lingering label",
    "next bag",
    "open job",
    "good sensor",
    "unscanned handover",
    "unused label",
    "late",
]


def one_of_each(shown):
    """Return the first of each way, and before a lingering label the part that it is on."""
    firsts = [next(each for each in shown if each.wrong == way) for way in WAYS]
    lies_there = next(each for each in shown if each.label == firsts[0].label)
    return [lies_there, *firsts]


def test_none_is_accepted_refused_or_taken_in_wrongly_by_camera_and_hand_scanner():
    done = run(one_of_each)
    assert [(each.shown.wrong, each.proposed) for each in done] == [
        (each.shown.wrong, each.shown.proposed) for each in done
    ]
    assert {each.by for each in done} == {"camera", "hand scanner"}
    assert max(each.taps + each.keys for each in done) == 2, "one more where a symbol is asked about"
