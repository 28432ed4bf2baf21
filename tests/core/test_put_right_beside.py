"""What was recorded outside any job is put right where it shows: at the sensor, and at the vehicle."""

import pytest

from server.core.facts.corrections import PUT_RIGHT
from tests.core.driver import JOB
from tests.core.driver import Driver
from tests.core.driver import home
from tests.hosts import CoreError

STOCK = "u0000000stock"


def beside(job, kind, **data):
    """Record an entry outside any job; return its number."""
    job.core("add", events=[{"event": job.envelope(kind, data, job=None)}])
    return job.seq


def spare(job, part="PS-1"):
    """Put a spare into stock without a job; return the number of the entry."""
    job.labels[STOCK] = job._fresh()
    data = {"unit": STOCK, "part": part, "serial": "", "code": job.labels[STOCK], "how": "scanned"}
    return beside(job, "unit_added", **data, place="stock")


def anew(job, seq, **changes):
    """Return the draft that enters an entry outside any job anew."""
    asked = job.core("entry", job=None, device=job.device, seq=seq)
    entry = {"kind": asked["kind"], "data": {**asked["data"], **changes}}
    data = {"device": job.device, "seq": seq, "entry": entry, "reason": "slip"}
    return {"kind": PUT_RIGHT, "data": data, "job": None, "actor": "Mara"}


def put_right(job, draft):
    """Record a correction outside any job."""
    job.core("add", events=[{"event": job.envelope(draft["kind"], draft["data"], job=None)}])


@pytest.fixture
def job(core):
    return Driver(core).begin()


def test_a_spare_shows_what_was_recorded_of_it_outside_a_job(job):
    added = spare(job)
    moved = beside(job, "unit_moved", unit=STOCK, place="customer", how="tapped", note="")
    shown = job.core("beside", unit=STOCK)
    assert [(entry["seq"], entry["may_right"], entry["may_undo"]) for entry in shown["history"]] == [
        (moved, True, True),
        (added, True, True),
    ]
    assert shown["jobs"] == []
    assert "PS-1" in shown["history"][1]["sentence"]


def test_a_unit_of_a_job_shows_where_its_entries_are(job):
    shown = job.core("beside", unit=home("rear-right-outer"))
    assert (shown["history"], [each["id"] for each in shown["jobs"]]) == ([], [JOB])


def test_the_part_number_of_a_spare_is_put_right_and_said_before(job):
    added = spare(job)
    draft = anew(job, added, part="PS-2")
    told = job.core("righted", event=draft)
    assert told["refusal"] is None
    assert "PS-1" in told["sentence"].split("Afterwards")[0]
    assert "PS-2" in told["sentence"].split("Afterwards")[1]
    put_right(job, draft)
    assert job.core("state")["units"][STOCK]["part"] == "PS-2"
    [entry] = job.core("beside", unit=STOCK)["history"]
    assert "PS-1" in entry["righted"]["said"]


def test_a_move_to_the_wrong_place_is_put_right(job):
    spare(job)
    moved = beside(job, "unit_moved", unit=STOCK, place="customer", how="tapped", note="")
    fields = job.core("entry", job=None, device=job.device, seq=moved)["fields"]
    assert [each["name"] for each in fields] == ["place"]
    put_right(job, anew(job, moved, place="scrapped"))
    assert job.core("state")["units"][STOCK]["place"] == "scrapped"


def test_later_entries_that_no_longer_fit_are_told(job):
    spare(job)
    taken = beside(job, "unit_moved", unit=STOCK, place="out", how="tapped", note="")
    outer = "rear-right-outer"
    job.force("unit_pulled", unit=home(outer), position=outer, how="tapped")
    job.force("unit_fitted", unit=STOCK, position=outer, how="tapped", override="")
    told = job.core("righted", event=anew(job, taken, place="scrapped"))
    assert [each["seq"] for each in told["unfit"]] == [job.seq]
    assert "right outer" in told["unfit"][0]["sentence"]


def test_what_cannot_be_put_right_says_why_before_it_is_tapped(job):
    added = spare(job)
    told = job.core("righted", event=anew(job, added, code=job.labels[STOCK][::-1]))
    assert told["refusal"]["sentence"]
    told = job.core("righted", event=anew(job, added, unit="other"))
    assert told["refusal"]["rule"] == "correction"


def test_a_taken_back_entry_stays_and_can_no_longer_be_put_right(job):
    spare(job)
    moved = beside(job, "unit_moved", unit=STOCK, place="customer", how="tapped", note="")
    beside(job, "corrected", device=job.device, seq=moved, reason="the wrong one")
    entry = job.core("beside", unit=STOCK)["history"][0]
    assert (entry["undone"]["reason"], entry["may_right"], entry["may_undo"]) == (
        "the wrong one",
        False,
        False,
    )


def test_an_entry_that_is_not_there_is_said(job):
    with pytest.raises(CoreError, match="seq: found 99"):
        job.core("entry", job=None, device=job.device, seq=99)
    with pytest.raises(CoreError, match="nobody"):
        job.core("beside", unit="nobody")


def test_a_vehicle_is_put_right_where_its_job_began(job):
    opened = next(entry for entry in job.view()["history"] if "vehicle:v1" in entry["about"])
    asked = job.core("entry", job=JOB, device=opened["device"], seq=opened["seq"])
    assert [each["name"] for each in asked["fields"]][:4] == [
        "complaint", "vehicle.name", "vehicle.plate", "vehicle.vin",
    ]  # fmt: skip
    vehicle = {**asked["data"]["vehicle"], "plate": "KL 4711"}
    entry = {"kind": "job_opened", "data": {**asked["data"], "vehicle": vehicle}}
    job.fact(PUT_RIGHT, device=opened["device"], seq=opened["seq"], entry=entry, reason="slip")
    assert job.core("state")["vehicles"]["v1"]["plate"] == "KL 4711"


def test_where_a_sensor_was_seen_outside_any_job_is_entered_anew(job):
    spare(job)
    seen = beside(job, "unit_seen", unit=STOCK, place="customer", position="", how="scanned")
    [asked] = job.core("entry", job=None, device=job.device, seq=seen)["fields"]
    places = [option["sets"]["place"] for option in asked["options"]]
    assert places == ["stock", "out", "counter", "customer", "scrapped"]
    put_right(job, anew(job, seen, **asked["options"][2]["sets"]))
    assert job.core("state")["units"][STOCK]["place"] == "counter"
