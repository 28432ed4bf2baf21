"""What a server takes in, and what was kept before it had bounds, both hosts show alike and whole."""

import pytest

from server.core.facts.kinds import KINDS
from server.core.log import envelope
from tests.long_runs import times
from tests.odd_entries import chained
from tests.odd_entries import declared_entries
from tests.odd_entries import is_kept
from tests.odd_entries import is_taken
from tests.odd_entries import odd_entries

JOBS, FACTS = 3, 25
SEEDS = range(times(5, 100))


@pytest.mark.parametrize("seed", SEEDS)
@pytest.mark.parametrize("is_in", [is_taken, is_kept])
@pytest.mark.parametrize("make", [odd_entries, declared_entries])
def test_a_log_of_odd_entries_is_shown_whole_and_alike(core, caplog, seed, is_in, make):
    events = chained([draft for draft in make(seed, JOBS, FACTS) if is_in(draft)])

    assert core("reset", events=[{"event": event} for event in events])["count"] == len(events)

    state = core("state")
    not_understood = {each["event"] for each in state["not_understood"]}
    listed = core("job_list", stands="")["jobs"] if state["jobs"] else []
    assert {job["id"] for job in listed} == set(state["jobs"])
    core("job_list", text="car")
    core("waiting")
    core("conflicts")
    for job in sorted(state["jobs"]):
        view = core("job", job=job)
        opened = min(entry["seq"] for entry in view["history"])
        # Where an odd opening opened nothing and another one came later, what lies between belongs to no job.
        of_job = [event for event in events if event["job"] == job]
        before = [envelope.identity(event) for event in of_job if event["seq"] < opened]
        assert set(before) <= not_understood
        assert len(view["history"]) == len(of_job) - len(before)
        assert all(entry["sentence"] for entry in view["history"])
        core("report", job=job)
        core("evidence", job=job)
    for unit in sorted(state["units"]):
        core("unit", unit=unit)
    for vehicle in sorted(state["vehicles"]):
        core("vehicle", vehicle=vehicle)
    assert caplog.messages == []  # of what could not be said


def test_the_declared_entries_are_of_every_kind():
    drafts = [draft for seed in range(20) for draft in declared_entries(seed, JOBS, FACTS)]
    assert {draft["kind"] for draft in drafts if is_taken(draft)} == set(KINDS)


def test_of_the_odd_entries_some_are_taken_some_only_kept_and_some_neither():
    drafts = [draft for seed in SEEDS for draft in odd_entries(seed, JOBS, FACTS)]
    taken, kept = (sum(map(each, drafts)) for each in (is_taken, is_kept))
    assert 0 < taken < kept < len(drafts)
