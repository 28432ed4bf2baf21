"""A mistake is corrected by a later event that names it; the record shows both."""

import pytest

from tests.core.driver import DEVICE
from tests.core.driver import Driver
from tests.core.driver import home
from tests.core.scenarios import replaced_and_proven

OUTER, INNER = "rear-right-outer", "rear-right-inner"


def correct(job, seq, reason="tapped the wrong one"):
    return {"kind": "corrected", "data": {"device": DEVICE, "seq": seq, "reason": reason}}


def test_a_test_that_was_taken_back_counts_for_nothing_and_stays_in_the_history(core):
    job = Driver(core).begin()
    job.test(OUTER)
    seq = job.seq
    job.record(correct(job, seq))
    view = job.view()
    assert view["trail"]["tests"] == []
    assert view["step"]["form"] == "test"
    taken = next(entry for entry in view["history"] if entry["seq"] == seq)
    assert taken["undone"] == {"actor": "Mara", "reason": "tapped the wrong one"}
    assert not taken["may_undo"]


def test_a_fact_that_later_ones_rest_on_is_not_taken_back(core):
    job = Driver(core).begin()
    job.test(OUTER)
    job.photograph()
    job.fact("move_started", move="exchange", position="", reason="x",
             fitted={OUTER: home(INNER), INNER: home(OUTER)})  # fmt: skip
    for _ in range(3):
        job.scan(job._label_for(job.step()["expects"]))
    pulled = next(e["seq"] for e in job.events if e["kind"] == "unit_pulled")
    stop = job.check(correct(job, pulled))
    assert stop["rule"] == "correction"
    assert "newest" in stop["do"]


def test_the_closing_can_be_taken_back(core):
    job = Driver(core).begin()
    job.test()
    job.tap("second")
    job.record(correct(job, job.seq))
    assert not job.view()["closed"]


def last_first(job, since):
    """Return what takes back the entries of one tap, the last one first."""
    return [correct(job, each["seq"]) for each in reversed(job.events[since:])]


def test_a_pull_is_taken_back_with_the_label_that_was_put_on(core):
    job = Driver(core).begin()
    job.test(OUTER)
    job.fact("move_started", move="exchange", position="", reason="x",
             fitted={OUTER: home(INNER), INNER: home(OUTER)})  # fmt: skip
    since = len(job.events)
    job.scan(job._label_for(job.step()["expects"]))
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
    job.record(correct(job, job.seq))
    seq = {"nothing": 999, "opening": 1, "correction": job.seq, "twice": job.seq - 1}[which]
    assert job.check(correct(job, seq))["rule"] == "correction"


def test_a_correction_that_arrives_before_its_target_still_counts(core):
    """Two phones: the receipt order between devices is the server's, so either may come first."""
    job = Driver(core).begin()
    envelope = job.envelope("cleaned", {"position": OUTER, "note": ""})
    other = Driver(core, device="dfedcba9876543210")
    other.force("corrected", device=DEVICE, seq=envelope["seq"], reason="never did")
    core("add", events=[{"event": envelope}])
    assert core("state")["jobs"][job.job]["pending"]["cleaned"] == []
