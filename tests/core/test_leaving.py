"""From every kind of step there are three ways out: a pause, an end without a repair, and another's hands."""

import pytest

from tests.browser.every_stage import stages


@pytest.fixture(scope="module")
def logs():
    return stages()


def look(core, events):
    core("reset", events=[{"event": event} for event in events])
    return core("job", job=events[0]["job"])


def test_the_stage_of_a_contradiction_stands_at_one(core, logs):
    assert look(core, logs["contradiction"])["step"]["form"] == "contradiction"


def test_every_step_can_be_left_in_three_ways(core, logs):
    left = 0
    for stage in sorted(logs):
        view = look(core, logs[stage])
        if view["closed"]:
            continue
        left += 1
        ways = view["ways"]
        assert ways["hand"], stage
        for choice in ways["pause"]["choices"]:
            assert not refusal(core, view, choice), stage
        close = ways["close"]
        assert [each for each in close["choices"] if each["wants"] != "note"], stage
        if not close["blockers"]:
            assert not refusal(core, view, close["choices"][0]), stage
        else:
            # Each thing that holds the end up is there to be settled, or goes with the move that is stopped.
            assert close["settle"] or close["stop"], stage
    assert left > 10


def refusal(core, view, choice):
    """Return what stands against a way, its note typed."""
    drafts = [
        {"kind": draft["kind"], "data": {**draft["data"], **typed(choice)}} for draft in choice["events"]
    ]
    return core("check", events=[{**draft, "job": view["id"], "actor": "Mara"} for draft in drafts])[
        "refusal"
    ]


def typed(choice):
    return {"note": "typed"} if choice["wants"] == "note" else {}
