"""Nothing is dropped: unknown kinds, malformed data and facts about unknown things are kept and listed."""

import pytest

from tests.core.driver import Driver
from tests.hosts import CoreError


def test_an_unknown_kind_is_kept_and_said_not_to_be_understood(core):
    job = Driver(core).begin()
    job.force("sensor_painted", colour="blue")
    assert "Recorded by a newer version of this app" in job.view()["history"][0]["sentence"]
    missed = core("conflicts")["not_understood"]
    assert [entry["kind"] for entry in missed] == ["sensor_painted"]


def test_a_newer_format_is_kept_whole_and_counts_for_nothing_yet(core):
    job = Driver(core).begin()
    event = job.envelope("cleaned", {"position": "rear-left-outer", "note": ""})
    newer = {**event, "v": 2, "place": "bay 4"}
    assert core("envelope", event=newer)["hash"] != core("envelope", event={**event, "v": 2})["hash"]

    core("add", events=[{"event": newer}])

    entry = job.view()["history"][0]
    assert "Recorded by a newer version of this app" in entry["sentence"]
    assert entry["may_undo"] is False
    assert core("conflicts")["not_understood"][0]["kind"] == "cleaned"
    with pytest.raises(CoreError, match="place"):
        core("add", events=[{"event": {**newer, "v": 1}}])


def test_a_newer_correction_takes_nothing_back_before_it_is_understood(core):
    job = Driver(core).begin()
    target = job.events[-1]
    event = job.envelope("corrected", {"device": target["device"], "seq": target["seq"], "reason": "slip"})
    core("add", events=[{"event": {**event, "v": 2}}])
    assert [entry["undone"] for entry in job.view()["history"]] == [None] * len(job.view()["history"])


def test_a_further_field_of_a_known_kind_is_let_through(core):
    job = Driver(core).begin()
    job.force("cleaned", position="rear-left-outer", note="", with_what="a brush")
    assert core("conflicts")["not_understood"] == []


def test_an_app_that_is_too_old_begins_no_job_and_goes_on_with_those_there_are(core):
    job = Driver(core)
    layouts = {entry["id"]: entry for entry in core("layouts")}
    opening = {
        "kind": "job_opened",
        "job": job.job,
        "data": {
            "vehicle": {"id": "v1", "name": "Blue estate", "vin": ""},
            "complaint": "beeps",
            "layout": "rear-4",
            "part": "PS-1",
            "positions": layouts["rear-4"]["positions"],
        },
    }
    assert core("check", events=[{**opening, "oldest": 1}])["refusal"] is None
    refused = core("check", events=[{**opening, "oldest": 2}])["refusal"]
    assert (refused["rule"], refused["override"]) == ("too_old", False)
    job.begin()
    going_on = {"kind": "cleaned", "job": job.job, "data": {"position": "rear-left-outer", "note": ""}}
    assert core("check", events=[{**going_on, "oldest": 2}])["refusal"] is None


def test_a_known_kind_of_another_form_is_kept_and_says_why(core):
    job = Driver(core).begin()
    job.force("test_run", heard="yes")
    assert "wanted the field to be there" in core("conflicts")["not_understood"][0]["why"]
    assert job.view()["step"]["id"] == "test"


@pytest.mark.parametrize(
    ("kind", "data", "word"),
    [
        pytest.param("cleaned", {"position": "roof", "note": ""}, "no position roof", id="position"),
        pytest.param("cleaned", {"position": 5, "note": ""}, "data.position", id="type"),
        pytest.param("cleaned", {"note": ""}, "data.position", id="missing"),
        pytest.param("lamp_checked", {"when": "noon", "result": "x", "note": ""}, "one of", id="choice"),
        pytest.param("unit_pulled", {"unit": "ghost", "position": "rear-left-outer", "how": "tapped"},
                     "not on record", id="unknown unit"),
        pytest.param("sensor_painted", {}, "not known", id="unknown kind"),
        pytest.param("corrected", {"device": "d0", "seq": 3, "reason": " "}, "a reason", id="no reason"),
    ],
)  # fmt: skip
def test_the_phone_refuses_to_record_what_makes_no_sense(core, kind, data, word):
    job = Driver(core).begin()
    stop = job.check({"kind": kind, "data": data})
    assert stop["rule"] == "form"
    assert word in stop["sentence"]


def test_work_on_an_unknown_job_is_kept_without_harm(core):
    job = Driver(core, job="jnowhere")
    job.force("cleaned", position="rear-left-outer", note="")
    assert core("jobs") == []
    assert core("conflicts")["not_understood"][0]["why"] == "Its job is not known."


def test_a_unit_seen_fitted_away_from_any_job_is_kept_and_its_place_stays_known(core):
    job = Driver(core).begin()
    unit = "v1.rear-left-outer"
    seen = job.envelope(
        "unit_seen",
        {"unit": unit, "place": "fitted", "position": "rear-left-outer", "how": "scanned"},
        job=None,
    )
    core("add", events=[{"event": seen}])
    assert "names no job" in core("conflicts")["not_understood"][0]["why"]
    assert core("unit", unit=unit)["where"] == "fitted at left outer"


def test_a_mixed_unit_seen_where_no_body_of_it_is_can_still_be_looked_at(core):
    job = Driver(core).begin()
    for place in ("rear-left-outer", "rear-left-inner"):
        job.force("unit_pulled", unit=f"v1.{place}", position=place, how="scanned")
    job.force("units_mixed", units=["v1.rear-left-outer", "v1.rear-left-inner"], note="")
    job.force(
        "unit_seen", unit="v1.rear-left-outer", place="fitted", position="rear-left-inner", how="scanned"
    )
    seen = core("unit", unit="v1.rear-left-outer")
    assert "fitted at left inner of Blue estate" in [claim["words"] for claim in seen["claims"]]


def test_a_move_of_a_unit_that_nobody_introduced_is_kept_in_dispute(core):
    job = Driver(core).begin()
    job.force("unit_fitted", unit="ughost", position="rear-left-outer", how="tapped", override="")
    assert [line["id"] for line in job.view()["disputes"]] == ["ughost"]


@pytest.mark.parametrize(
    ("change", "field"),
    [
        ({"device": "phone"}, "event.device"),
        ({"device": 7}, "event.device"),
        ({"seq": 0}, "event.seq"),
        ({"seq": True}, "event.seq"),
        ({"prev": "00"}, "event.prev"),
        ({"v": "1"}, "event.v"),
        ({"at": -1}, "event.at"),
        ({"actor": None}, "event.actor"),
        ({"job": ""}, "event.job"),
        ({"kind": ""}, "event.kind"),
        ({"data": []}, "event.data"),
        ({"extra": 1}, "event.extra"),
    ],
)
def test_a_malformed_envelope_names_its_field(core, change, field):
    event = Driver(core).envelope("cleaned", {"position": "x", "note": ""})
    event.update(change)
    with pytest.raises(CoreError) as caught:
        core("envelope", event=event)
    assert caught.value.field == field


@pytest.mark.parametrize(
    "text",
    [
        "",
        "{",
        "[]",
        '"reset"',
        '{"op": 3}',
        '{"op": "nothing"}',
        '{"op": "job"}',
        '{"op": "job", "job": "j"}',
    ],
)
def test_a_call_that_is_none_gets_the_one_error_shape(text):
    import json

    from server.core.host import Host

    answer = json.loads(Host().call(text))
    assert set(answer) == {"ok", "error"}
    assert set(answer["error"]) == {"field", "found", "wanted", "message"}
