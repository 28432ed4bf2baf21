"""Times of a job on which two phones were at work: none has the work of the other phone in it."""

import pytest

from demo_db.dice import Dice
from server.core.facts.fold import Fold
from server.core.state.job import known_job
from server.lessons import minutes
from tests.made_up_yard import Yard

ANA, BO = "d00000000000000aa", "d00000000000000bb"
HOUR = 3_600_000


@pytest.fixture(scope="module")
def jobs():
    """The entries of each of twenty jobs, all of one phone."""
    found: dict[str, list[dict]] = {}
    for entry in Yard("two phones", 20).entries:
        found.setdefault(entry["event"]["job"], []).append(entry["event"])
    return list(found.values())


def times(events, phones):
    """Return the times of a job, and how many are left out, where these phones recorded its entries."""
    seqs = {ANA: 0, BO: 0}
    recorded = []
    for event, phone in zip(events, phones, strict=True):
        seqs[phone] += 1
        recorded.append({**event, "device": phone, "seq": seqs[phone], "prev": ""})
    return of_log(recorded)


def of_log(events):
    fold = Fold()
    fold.reset(events)
    found, left_out = minutes.of_job(known_job(fold.state, events[0]["job"]))
    return [tuple(each) for each in found], left_out


def in_turns(events, seed):
    dice = Dice("turns", seed)
    return [ANA] + [ANA if dice.between(0, 1) < 0.5 else BO for _ in events[1:]]


def test_turns_leave_no_time_but_those_that_one_phone_alone_would_have_had(jobs):
    left_out = 0
    for number, events in enumerate(jobs):
        found, out = times(events, in_turns(events, str(number)))

        alone, _ = times(events, [ANA] * len(events))
        assert set(found) <= set(alone)
        left_out += out
    assert left_out > 10 * len(jobs)


def lengths(found):
    """Return what times are without their action: which pull came first is another thing to tell."""
    return {(position, ms) for _, position, ms in found}


def test_of_what_a_phone_sends_late_the_clocks_tell_what_lay_between(jobs):
    for number, events in enumerate(jobs):
        phones = in_turns(events, str(number))
        late = sorted(zip(events, phones, strict=True), key=lambda each: each[1])

        found, left_out = times(*zip(*late, strict=True))

        alone, _ = times(events, [ANA] * len(events))
        assert lengths(found) <= lengths(alone)
        assert left_out


def test_of_what_a_wrong_clock_recorded_the_order_of_the_log_tells_it(jobs):
    for number, events in enumerate(jobs):
        phones = in_turns(events, str(number))
        wrong = [
            {**event, "at": event["at"] + 5 * HOUR * (phone == BO)}
            for event, phone in zip(events, phones, strict=True)
        ]

        found, left_out = times(wrong, phones)

        alone, _ = times(events, [ANA] * len(events))
        assert lengths(found) <= lengths(alone)
        assert left_out


def test_a_job_that_one_phone_takes_over_from_another_keeps_its_times(jobs):
    for events in jobs:
        half = len(events) // 2

        found, left_out = times(events, [ANA] * half + [BO] * (len(events) - half))

        alone, _ = times(events, [ANA] * len(events))
        assert left_out == 0
        assert len(found) >= len(alone) - 1  # what was under way when it was handed over


def test_one_test_by_a_second_phone_takes_away_that_test_and_what_it_fell_into_alone(jobs):
    for events in jobs:
        tests = [n for n, event in enumerate(events) if event["kind"] == "test_run"]
        phones = [ANA] * len(events)
        phones[tests[1]] = BO

        found, left_out = times(events, phones)

        alone, _ = times(events, [ANA] * len(events))
        assert left_out <= 1
        assert len(found) >= len(alone) - 2


def test_of_two_who_work_side_by_side_not_the_short_times_alone_are_kept(jobs):
    """A time with no entry of the other within is short by that: those that are left would be too short."""
    events = max(jobs, key=len)
    beside = [{**event, "at": event["at"] + 40_000, "data": dict(event["data"])} for event in events[1:-1]]
    both = sorted(
        [(event["at"], ANA, event) for event in events] + [(event["at"], BO, event) for event in beside],
        key=lambda each: each[:2],
    )

    found, left_out = times([event for _, _, event in both], [phone for _, phone, _ in both])

    alone, _ = times(events, [ANA] * len(events))
    assert left_out >= 2 * len(alone) - 3
    assert len(found) <= 2
