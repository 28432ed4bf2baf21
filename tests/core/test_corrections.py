"""A mistake is corrected by a later event that names it; the record shows both."""

import pytest

from tests.core.driver import DEVICE
from tests.core.driver import Driver
from tests.core.driver import home
from tests.core.scenarios import replaced_and_proven

OUTER, INNER = "rear-right-outer", "rear-right-inner"


def correct(seq, reason="tapped the wrong one"):
    return {"kind": "corrected", "data": {"device": DEVICE, "seq": seq, "reason": reason}}


def test_a_test_that_was_taken_back_counts_for_nothing_and_stays_in_the_history(core):
    job = Driver(core).begin()
    job.test(OUTER)
    seq = job.seq
    job.record(correct(seq))
    view = job.view()
    assert view["trail"]["tests"] == []
    assert view["step"]["form"] == "test"
    taken = next(entry for entry in view["history"] if entry["seq"] == seq)
    assert taken["undone"] == {"actor": "Mara", "reason": "tapped the wrong one"}
    assert not taken["may_undo"]


def test_a_fact_that_later_ones_rest_on_is_not_taken_back(core):
    job = Driver(core).faulted()
    job.start_exchange()
    for _ in range(3):
        job.scan_wanted()
    pulled = next(e["seq"] for e in job.events if e["kind"] == "unit_pulled")
    stop = job.check(correct(pulled))
    assert stop["rule"] == "correction"
    assert "newest" in stop["do"]


def test_the_closing_can_be_taken_back(core):
    job = Driver(core).begin()
    job.test()
    job.tap("second")
    job.record(correct(job.seq))
    assert not job.view()["closed"]


def last_first(job, since):
    """Return what takes back the entries of one tap, the last one first."""
    return [correct(each["seq"]) for each in reversed(job.events[since:])]


def test_a_pull_is_taken_back_with_the_label_that_was_put_on(core):
    job = Driver(core).begin()
    job.test(OUTER)
    job.start_exchange()
    since = len(job.events)
    job.scan_wanted()
    assert [each["kind"] for each in job.events[since:]] == ["unit_pulled", "unit_labelled"]
    job.record(*last_first(job, since)[::-1])
    assert (job.step()["id"], job.view()["out"]) == ("pull", [])


def test_a_closing_is_taken_back_with_where_the_last_sensor_went(core):
    job = Driver(core)
    replaced_and_proven(job)
    job.tap()
    since = len(job.events)
    job.choose(0)
    assert job.view()["closed"]
    drafts = last_first(job, since)
    assert len(drafts) == 3
    assert job.check(*drafts[::-1])["rule"] == "correction"
    assert job.check(*drafts, drafts[0])["rule"] == "correction"
    job.record(*drafts)
    assert (job.view()["closed"], job.step()["id"]) == (False, "home")


@pytest.mark.parametrize("which", ["nothing", "opening", "correction", "twice"])
def test_what_cannot_be_taken_back_is_refused(core, which):
    job = Driver(core).begin()
    job.test(OUTER)
    job.record(correct(job.seq))
    seq = {"nothing": 999, "opening": 1, "correction": job.seq, "twice": job.seq - 1}[which]
    assert job.check(correct(seq))["rule"] == "correction"


def test_a_correction_that_arrives_before_its_target_still_counts(core):
    """Two phones: the receipt order between devices is the server's, so either may come first."""
    job = Driver(core).begin()
    envelope = job.envelope("cleaned", {"position": OUTER, "note": ""})
    other = Driver(core, device="dfedcba9876543210")
    other.force("corrected", device=DEVICE, seq=envelope["seq"], reason="never did")
    core("add", events=[{"event": envelope}])
    assert core("state")["jobs"][job.job]["pending"]["cleaned"] == []


def entry_of(job, seq):
    """Return an entry as the history shows it."""
    return next(entry for entry in job.view()["history"] if entry["seq"] == seq)


def test_what_was_taken_back_by_mistake_is_brought_back_into_its_place(core):
    job = Driver(core).begin()
    job.test(OUTER)
    seq = job.seq
    job.test()
    before = job.view()["trail"], job.core("reasoned", job=job.job)
    assert "back" not in entry_of(job, seq)
    for _ in range(2):
        job.record(correct(seq))
        assert len(job.view()["trail"]["tests"]) == 1
        job.record(*entry_of(job, seq)["back"])
        shown = entry_of(job, seq)
        assert (shown["undone"], shown["righted"], shown["may_undo"], shown["may_right"]) == (
            None,
            None,
            True,
            True,
        )
        assert (job.view()["trail"], job.core("reasoned", job=job.job)) == before


def test_it_comes_back_as_it_was_put_right(core):
    job = Driver(core).begin()
    job.test(OUTER)
    seq = job.seq
    right = {"kind": "test_run", "data": {**job.events[-1]["data"], "faulted": [INNER]}}
    job.fact("put_right", device=DEVICE, seq=seq, entry=right, reason="slip")
    job.record(correct(seq))
    job.record(*entry_of(job, seq)["back"])
    assert job.core("state")["jobs"][job.job]["tests"][0]["faulted"] == [INNER]


def test_it_does_not_come_back_where_what_was_entered_since_contradicts(core):
    job = Driver(core).begin()
    job.test(OUTER)
    job.force("unit_pulled", unit=home(OUTER), position=OUTER, how="tapped")
    seq = job.seq
    job.record(correct(seq))
    job.force("unit_pulled", unit=home(OUTER), position=OUTER, how="tapped")
    stop = job.check(*entry_of(job, seq)["back"])
    assert (stop["rule"], stop["sentence"], stop["do"]) == (
        "correction",
        "What was entered later does not go with it.",
        "Enter what is so now.",
    )


def test_what_was_recorded_outside_any_job_comes_back_too(core):
    job = Driver(core).begin()
    spare = {"unit": "u00000000spare", "part": "PS-1", "serial": "", "code": "", "how": "tapped"}
    moved = {"unit": spare["unit"], "place": "customer", "how": "tapped", "note": ""}
    for kind, data in (("unit_added", {**spare, "place": "stock"}), ("unit_moved", moved)):
        core("add", events=[{"event": job.envelope(kind, data, job=None)}])
    named = {"device": DEVICE, "seq": job.seq, "reason": "slip"}
    core("add", events=[{"event": job.envelope("corrected", named, job=None)}])
    assert core("state")["units"][spare["unit"]]["place"] == "stock"
    [draft] = core("beside", unit=spare["unit"])["history"][0]["back"]
    assert (
        core("check", events=[{**draft, "job": None, "actor": "Mara", "device": DEVICE}])["refusal"] is None
    )
    core("add", events=[{"event": job.envelope(draft["kind"], draft["data"], job=None)}])
    assert core("state")["units"][spare["unit"]]["place"] == "customer"
