"""What a phone recorded that its role may not, and in whose name: flagged by the fold, and told."""

import json

import pytest

from server.core.facts.fold import Fold
from server.core.facts.whose import phones_of
from server.core.log import canon
from tests.core.counter_yard import BAD
from tests.core.driver import DEVICE
from tests.core.driver import Driver
from tests.core.random_logs import PHONES
from tests.core.random_logs import random_log
from tests.core.test_roles import handover
from tests.core.test_roles import received
from tests.core.test_roles import taken_back
from tests.core.test_snapshot import PhoneLike
from tests.core.test_snapshot import whole
from tests.said import english

OTHER = "d00000000000000cc"
FLAGGED = "A phone of the parts counter recorded this. It is for the bench to record."


def said(device=OTHER, first=1, role="counter", name="Jo", people=()):
    return {"device": device, "from": first, "role": role, "name": name, "people": list(people)}


def of_roles(core):
    return [each for each in core("conflicts")["conflicts"] if each["about"] == "role"]


def newest(job):
    return job.view()["history"][0]


def at_work(core, *phones, actor="Jo"):
    """A job of Mara's that another phone records on, of which this is said."""
    mara = Driver(core).begin()
    core("phones", phones=list(phones))
    return mara, Driver(core, device=OTHER, actor=actor)


def test_what_the_role_of_a_phone_does_not_record_is_flagged_and_counts(core):
    mara, other = at_work(core, said())
    other.force("cleaned", position="rear-right-outer", note="")

    [flag] = of_roles(core)
    assert flag["event"] == f"{OTHER}:1"
    assert (flag["job"], flag["open"]) == (mara.job, False)
    assert [english(each) for each in newest(mara)["flags"]] == [FLAGGED]
    assert "who" not in newest(mara)


@pytest.mark.parametrize("phones", [[], [said(first=2)], [said(role="bench")], [said(device=DEVICE)]])
def test_a_phone_without_a_certificate_then_and_one_that_may_are_not_flagged(core, phones):
    mara, other = at_work(core, *phones)
    other.force("cleaned", position="rear-right-outer", note="")

    assert [flag for flag in of_roles(core) if flag["event"].startswith(OTHER)] == []
    assert "flags" not in newest(mara)


def test_a_sensor_that_the_counter_says_is_on_a_vehicle_is_flagged_with_the_sensor(core):
    _, other = at_work(core, said())
    other.force("unit_seen", unit=BAD, place="fitted", position="rear-right-outer", how="scanned")
    other.force("unit_seen", unit=BAD, place="stock", position="", how="scanned")

    assert [(flag["event"], flag["unit"]) for flag in of_roles(core)] == [(f"{OTHER}:1", BAD)]


def test_the_counter_corrects_its_own_slips_and_no_other(core):
    job, clerk = received(core)
    core("phones", phones=[said(clerk.device, name="Sam"), said(DEVICE, role="bench", name="Mara")])
    clerk.force(**{"kind": "corrected", **taken_back(job.device, handover(job))["data"]})
    own = [each["seq"] for each in clerk.events if each["kind"] == "return_received"]
    clerk.force("corrected", **taken_back(clerk.device, own[0])["data"])

    assert [flag["event"] for flag in of_roles(core)] == [f"{clerk.device}:{clerk.seq - 1}"]


def test_a_flag_goes_with_the_entry_that_is_taken_back(core):
    mara, other = at_work(core, said())
    other.force("cleaned", position="rear-right-outer", note="")
    mara.force("corrected", **taken_back(OTHER, 1)["data"])

    assert of_roles(core) == []


@pytest.mark.parametrize(
    ("actor", "people", "who", "flags"),
    [
        ("Jo", [], None, []),
        ("Bo", ["Bo"], "Bo, on the phone of Jo", []),
        ("Bo", ["Ana"], "said by Bo on the phone of Jo", ["Nobody has said that Bo uses this phone."]),
        ("", [], "on the phone of Jo, without a name", []),
    ],
)
def test_another_name_than_the_phones_is_told_with_whose_phone_it_is(core, actor, people, who, flags):
    mara, other = at_work(core, said(role="bench", people=people), actor=actor)
    other.force("cleaned", position="rear-right-outer", note="")

    entry = newest(mara)
    assert (english(entry["who"]) if "who" in entry else None) == who
    assert [english(each) for each in entry.get("flags", [])] == flags
    assert of_roles(core) == []


NAMES = [
    ("Jo", [], "Jo"),
    ("Bo", ["Bo"], "Bo, on the phone of Jo"),
    ("Bo", [], "said by Bo on the phone of Jo"),
    ("", [], "on the phone of Jo, without a name"),
]


@pytest.mark.parametrize(("actor", "people", "told"), NAMES)
def test_the_trail_of_a_sensor_and_the_report_tell_whose_phone_it_was(core, actor, people, told):
    mara, other = at_work(core, said(role="bench", people=people), actor=actor)
    other.force("unit_pulled", unit=BAD, position="rear-right-outer", how="tapped")
    other.force("job_closed", note="")

    assert english(core("unit", unit=BAD)["custody"][-1]["actor"]) == told
    report = core("report", job=mara.job)
    assert english(report["closed"]["actor"]) == told
    assert [english(each) for each in report["by"]] == ["Mara", *([told] if actor else [])]


@pytest.mark.parametrize(("actor", "people", "told"), NAMES)
def test_what_waits_at_the_counter_tells_on_whose_phone_it_was_received(core, actor, people, told):
    core("phones", phones=[said(name="Jo", people=people)])
    other = Driver(core, device=OTHER, job=None, actor=actor)
    other.force("unit_added", unit="u0000000spare", part="P", serial="", code="", how="tapped", place="stock")
    other.force("return_received", unit="u0000000spare", how="tapped", code="", part="", serial="",
                compared="", note="")  # fmt: skip

    [line] = [each for each in core("waiting") if each["unit"] == "u0000000spare"]
    assert english(line["by"]) == told


@pytest.mark.parametrize("people", [[], ["Jo"]])
def test_a_decision_tells_on_whose_phone_it_was_signed(core, people):
    _, clerk = received(core)
    core("phones", phones=[said(clerk.device, name="Kim", people=people)])
    [returned] = core("unit", unit=BAD)["returns"]

    told = english(returned["decision"]["sentence"])

    assert "It was signed on the phone of Kim." in told
    assert (f"Nobody has said that {clerk.actor} uses this phone." in told) == (not people)


def test_who_shares_a_phone_is_said_from_an_entry_on(core):
    mara, other = at_work(core, said(role="bench"), said(first=2, role="bench", people=["Bo"]), actor="Bo")
    other.force("cleaned", position="rear-right-outer", note="")
    other.force("cleaned", position="rear-right-outer", note="again")

    again, first = mara.view()["history"][:2]
    assert ("flags" in again, "flags" in first) == (False, True)


def test_an_entry_about_a_spare_outside_any_job_tells_whose_phone_it_is_of(core):
    at_work(core, said(role="bench"))
    other = Driver(core, device=OTHER, job=None, actor="Bo")
    unit = "u0000000spare"
    other.force("unit_added", unit=unit, part="P", serial="", code="", how="tapped", place="stock")

    [entry] = core("beside", unit=unit)["history"]
    assert english(entry["who"]) == "said by Bo on the phone of Jo"


def test_a_start_from_a_snapshot_keeps_the_flags_and_what_is_said_of_phones():
    log = random_log(3, 40)
    phone = PhoneLike([{"event": event} for event in log[:30]])
    phone.value("reset", events=phone.log, phones=[said(PHONES[0])])
    assert any(each["about"] == "role" for each in phone.value("conflicts")["conflicts"])
    before = phone.value("conflicts")
    phone.start_again()
    assert phone.value("conflicts") == before
    phone.value("phones", phones=[said(PHONES[0])])
    for event in log[30:]:
        phone.add({"event": event})

    host = whole([])
    host.call(json.dumps({"op": "reset", "events": phone.log, "phones": [said(PHONES[0])]}))
    assert phone.value("conflicts") == json.loads(host.call('{"op": "conflicts"}'))["value"]


@pytest.mark.parametrize("seed", range(20))
def test_in_whatever_parts_a_log_is_folded_the_same_is_flagged(seed):
    """A correction folds a part again, and an entry may come in before others."""
    log = random_log(seed, 60)
    rows = [said(PHONES[0], 3), said(PHONES[1], role="bench"), said(PHONES[2])]

    def folded(events):
        fold = Fold()
        fold.know_phones(phones_of(rows))
        fold.reset(events)
        return canon.dumps(fold.state.as_dict())

    fold = Fold()
    fold.know_phones(phones_of(rows))
    for event in log[:50]:
        fold.add([event])
    assert canon.dumps(fold.state.as_dict()) == folded(log[:50])
    fold.insert(log[50:], 50)
    assert canon.dumps(fold.state.as_dict()) == folded(log)
    assert any(each["about"] == "role" for each in fold.state.conflicts)
