"""What goes into a record and what stays at home, and that the core makes the same of it as at home."""

import io
import json
import zipfile
from contextlib import closing

import pytest

from server.clock import now_ms
from server.core.host import Host
from server.core.record.comparison import stand_ins
from server.keeping.record.check import check
from server.keeping.record.make import make
from server.phones.signing import signer
from server.refusals import CommandRefused
from tests.said import english
from tests.server.keeping.record_yard import BAD
from tests.server.keeping.record_yard import BAD_CODE
from tests.server.keeping.record_yard import CAR
from tests.server.keeping.record_yard import IVO
from tests.server.keeping.record_yard import JOB
from tests.server.keeping.record_yard import MARA
from tests.server.keeping.record_yard import OTHERS_JOB
from tests.server.keeping.record_yard import SECRET
from tests.server.keeping.record_yard import SPARE
from tests.server.keeping.record_yard import SPARE_CODE
from tests.server.keeping.record_yard import Yard
from tests.server.keeping.record_yard import digest
from tests.server.keeping.record_yard import filled


@pytest.fixture
def yard(tmp_path):
    return filled(tmp_path / "data").stored()


def record_of(yard, name):
    """Returns the record of `name` as whoever gets the file reads it."""
    with closing(yard.folder.open()) as db:
        made = make(db, yard.folder.photos, name, signer(yard.folder), now_ms())
    return check(made.data), made


def shown(found):
    """Returns what the core shows of a record, folded by itself."""
    host = Host()

    def ask(op, **arguments):
        answer = json.loads(host.call(json.dumps({"op": op, **arguments})))
        assert answer["ok"], answer
        return answer["value"]

    record = found.record
    events = [*stand_ins(record["elsewhere"]), *found.events]
    ask("reset", events=[{"event": event} for event in events])
    return ask("record", **{name: record[name] for name in ("unit", "jobs", "told", "elsewhere")})


def kinds_of(found):
    return [(event["kind"], event["job"]) for event in found.events]


def test_a_sensors_record_has_its_whole_job_and_what_happened_to_it_outside(yard):
    found, made = record_of(yard, BAD_CODE)
    mine = [entry["event"] for entry in yard.received if entry["event"]["job"] == JOB]
    moved = yard.received[-2]["event"]
    took_back = next(e["event"] for e in yard.received if e["event"]["kind"] == "corrected")
    assert [event for event in found.events if event["job"] == JOB] == mine
    assert [event for event in found.events if event["job"] is None] == [took_back, moved]
    assert found.record["unit"] == BAD
    assert found.record["jobs"] == [JOB]
    assert sorted(found.photos) == sorted([digest("unit"), digest("screen")])
    assert (made.photos, made.absent) == (2, 0)


def test_another_customers_job_stays_at_home_but_for_the_hashes_of_its_entries(yard):
    found, made = record_of(yard, BAD_CODE)
    assert SECRET.encode() not in made.data
    assert b"Red hatchback" not in made.data
    assert digest("others").encode() not in made.data
    assert ("job_opened", OTHERS_JOB) not in kinds_of(found)
    hashes = json.loads(members(made.data)["hashes.json"])
    seqs = [event["seq"] for event in found.events if event["device"] == MARA]
    assert hashes["devices"][MARA]["first"] == min(seqs)
    told = [entry["hash"] for entry in yard.chains[MARA][min(seqs) - 1 : max(seqs)]]
    assert hashes["devices"][MARA]["hashes"] == told


def members(data):
    """Returns the members as an unpacking program of the standard library has them."""
    with zipfile.ZipFile(io.BytesIO(data)) as archive:
        assert archive.testzip() is None
        return {name: archive.read(name) for name in archive.namelist()}


def test_an_unpacking_program_finds_the_members_and_the_photos_at_their_places(yard):
    found, made = record_of(yard, BAD_CODE)
    unpacked = members(made.data)
    for name, (offset, length) in found.photos.items():
        assert made.data[offset : offset + length] == unpacked[f"photos/{name}.jpg"]
    assert unpacked["entries.jsonl"].count(b"\n") == len(found.events)


def test_the_core_makes_the_same_of_a_record_as_at_home(yard):
    found, _ = record_of(yard, BAD_CODE)
    view = shown(found)
    assert view["compared"]["same"], view["compared"]
    assert english(view["unit"]["where"]) == "at the parts counter"
    assert not view["unit"]["disputed"]
    assert english(view["jobs"][0]["reasoning"]["sentence"]).startswith("The fault")
    [entry] = [entry for entry in view["jobs"][0]["history"] if entry["device"] == IVO and entry["seq"] == 1]
    assert entry["undone"]["reason"] == "wrong position"


def test_a_sensor_from_other_work_is_introduced_with_its_label_and_not_in_dispute(yard):
    found, _ = record_of(yard, JOB)
    spare = {"unit": SPARE, "code": SPARE_CODE, "part": "SN-1", "serial": "", "place": "stock"}
    assert found.record["elsewhere"] == [spare]
    assert not [event for event in found.events if event["data"].get("note") == "later, elsewhere"]
    view = shown(found)
    assert view["unit"] is None
    assert view["jobs"][0]["disputes"] == []
    said = f"{SPARE_CODE[:3]}-{SPARE_CODE[3:]} came from other work, which is not in this file."
    assert english(view["compared"]["elsewhere"]) == said


def test_where_other_work_counted_the_difference_is_said_with_both_figures(tmp_path):
    yard = Yard(tmp_path / "data")
    yard.opened(OTHERS_JOB, "v00000000000b", "Red hatchback", SECRET)
    for _ in range(3):
        yard.test(job=OTHERS_JOB)
    for kind, more in (("unit_labelled", {"code": SPARE_CODE}), ("unit_pulled", {"position": "rear-left"})):
        yard.fact(kind, OTHERS_JOB, unit=SPARE, how="scanned", **more)
    yard.opened(JOB, CAR, "Grey estate", "")
    yard.test("rear-left")
    yard.fact("unit_pulled", unit=BAD, position="rear-left", how="scanned")
    yard.fact("unit_fitted", unit=SPARE, position="rear-left", how="scanned", override="")
    yard.test("rear-left")
    found, _ = record_of(yard.stored(), JOB)
    compared = english(shown(found)["compared"])
    assert not compared["same"]
    [said] = compared["differs"]
    assert said.startswith("Grey estate: there it said: ")
    assert "Here it says: " in said
    there, here = said.split("Here it says: ")
    assert there.partition("said: ")[2] != here


def test_earlier_jobs_on_the_same_vehicle_come_along_for_who_sat_where(yard):
    yard.received.clear()
    yard.opened("j00000000000c", CAR, "Grey estate", "Again")
    yard.stored()
    found, _ = record_of(yard, "j00000000000c")
    assert found.record["jobs"] == [JOB, "j00000000000c"]
    assert record_of(yard, JOB)[0].record["jobs"] == [JOB]


def test_a_mixed_up_sensors_record_has_the_entries_that_tell_which_one_it_is(tmp_path):
    yard = Yard(tmp_path / "data")
    yard.opened(JOB, CAR, "Grey estate", "")
    yard.test("rear-left")
    for unit, code in ((BAD, BAD_CODE), (f"{CAR}.rear-right", SPARE_CODE)):
        yard.fact("unit_labelled", unit=unit, code=code, how="scanned")
        yard.fact("unit_pulled", unit=unit, position=unit.partition(".")[2], how="scanned")
    yard.fact("units_mixed", units=[BAD, f"{CAR}.rear-right"], note="")
    yard.fact("unit_seen", None, unit=f"{CAR}.rear-right", place="out", position="", how="scanned")
    found, _ = record_of(yard.stored(), BAD)
    assert ("unit_seen", None) in kinds_of(found)
    view = shown(found)
    assert view["compared"]["same"], view["compared"]
    assert view["unit"]["lost"]


def test_photos_that_have_not_come_in_are_listed_as_missing(tmp_path):
    yard = filled(tmp_path / "data").stored("screen")
    found, made = record_of(yard, BAD_CODE)
    assert found.record["missing"] == [digest("unit")]
    assert list(found.photos) == [digest("screen")]
    assert made.absent == 1


def test_a_photo_for_which_there_is_no_room_is_left_out_and_listed(yard, monkeypatch):
    monkeypatch.setattr("server.core.record.file.MOST_MEMBERS", 5)
    found, _ = record_of(yard, BAD_CODE)
    assert list(found.photos) == [digest("screen")]
    assert found.record["missing"] == [digest("unit")]


def test_entries_too_many_for_a_file_are_refused_and_said(yard, monkeypatch):
    monkeypatch.setattr("server.keeping.record.make.MOST_TEXT", 1000)
    with pytest.raises(CommandRefused, match="Take the record of one job"):
        record_of(yard, BAD_CODE)
