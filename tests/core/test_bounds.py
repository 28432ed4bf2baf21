"""What is recorded stays within what every host can show; what was kept before that is shown all the same."""

import copy
import json

import pytest

from server.core.facts.amounts import MOST_COUNT
from server.core.facts.kinds import KINDS
from server.core.host import Host
from server.core.log import envelope
from server.core.record.file import file_name
from server.words.visible import visible
from tests.core.driver import JOB
from tests.core.driver import START
from tests.core.driver import Driver
from tests.core.driver import home
from tests.hosts import CoreError
from tests.odd_entries import chained
from tests.said import english
from tests.said import refusing

RIGHT = "rear-right-outer"
BEYOND = 2**53 - 1
ID = 'letters from a to z, digits, "-", "_" and "."'


def opened(position="nose", group="rear", vehicle="v2"):
    place = {"id": position, "name": "nose", "group": group, "edge": "rear", "reach_minutes": 3}
    return {
        "vehicle": {"id": vehicle, "name": "Grey van", "vin": ""},
        "complaint": "",
        "layout": "",
        "part": "PS-1",
        "positions": [place],
    }


def pictured(**more):
    return {
        "sha256": "ab" * 32,
        "mime": "image/jpeg",
        "bytes": 1,
        "width": 1,
        "height": 1,
        "shows": "unit",
        "position": RIGHT,
        "unit": "",
        **more,
    }


def added(unit):
    return {"unit": unit, "part": "PS-1", "serial": "", "code": "", "how": "typed", "place": "stock"}


OUTSIDE = [
    ("job_opened", opened(position="ä"), "data.positions[0].id", '"ä"', ID),
    ("job_opened", opened(group="hinten links"), "data.positions[0].group", '"hinten links"', ID),
    ("job_opened", opened(vehicle="v/2"), "data.vehicle.id", '"v/2"', ID),
    ("unit_added", added("u\u202e1"), "data.unit", '"u\u202e1"', ID),
    ("unit_added", added("-u1"), "data.unit", '"-u1"', ID),
    ("photo_taken", pictured(bytes=BEYOND), "data.bytes", str(BEYOND),
     "a whole number of at most 1,000,000,000"),
    ("photo_taken", pictured(width=MOST_COUNT + 1), "data.width", str(MOST_COUNT + 1),
     "a whole number of at most 1,000,000,000"),
    ("labels_spoiled", {"batch": "b 1", "codes": [], "reason": "torn"}, "data.batch", '"b 1"', ID),
    ("labels_printed", {"batch": "b 1", "codes": [], "host": "", "layout": {}}, "data.batch", '"b 1"', ID),
]  # fmt: skip


@pytest.fixture
def job(core):
    return Driver(core).begin()


@pytest.mark.parametrize(("kind", "data", "field", "found", "wanted"), OUTSIDE)
def test_what_some_host_could_not_show_is_not_recorded(job, kind, data, field, found, wanted):
    draft = {"kind": kind, "data": data, **({"job": "j2"} if kind == "job_opened" else {})}
    stop = job.check(draft)
    assert (stop["rule"], stop["title"]) == ("bounds", "This can't be recorded")
    line = f"{field}: found {visible(found)}, wanted {wanted}"
    assert stop["fault"] == {"field": field, "found": found, "wanted": wanted, "message": line}


@pytest.mark.parametrize("identity", ["jö", "j 1", "../j1", "j\u200b1", ".j"])
def test_a_job_begins_under_an_id_that_fits_the_pattern(job, identity):
    assert job.check({"kind": "job_opened", "data": opened(), "job": identity})["fault"]["field"] == "job"
    assert job.check({"kind": "job_opened", "data": opened(), "job": "j2"}) is None


def test_half_a_character_and_keys_of_other_letters_are_not_recorded(job):
    fault = KINDS["cleaned"].out_of_bounds({"position": RIGHT, "note": "dirty \ud83d"})
    assert english(fault.as_dict())["message"] == (
        "data.note: found half of a character pair, wanted whole Unicode characters"
    )
    stop = job.check({"kind": "cleaned", "data": {"position": RIGHT, "note": "", "more": {"ä": 1}}})
    assert stop["fault"]["wanted"] == "keys of ASCII characters"


def test_what_an_entry_should_have_said_has_the_same_bounds(job):
    entry = {"kind": "photo_taken", "data": pictured(bytes=BEYOND)}
    data = {"device": job.device, "seq": 1, "entry": entry, "reason": "slip"}
    assert job.check({"kind": "put_right", "data": data})["fault"]["field"] == "data.entry.data.bytes"


def test_control_signs_and_writing_from_the_right_are_text_like_any_other(job):
    job.fact("cleaned", position=RIGHT, note="left\u202etfel \x07 a\u200bb \u05e2\u05d1")


def kept(core, events):
    """Fold a log as it was kept, whatever it holds."""
    core("reset", events=[{"event": event} for event in events])
    return core


def changed(events, old, new):
    return json.loads(json.dumps(events, ensure_ascii=False).replace(old, new))


def draw_all(core):
    """Ask for what screens draw; each raises where the core has no answer."""
    for operation, arguments in VIEWS:
        core(operation, **arguments)
    assert [job["id"] for job in core("job_list")["jobs"]] == [JOB]
    assert core("job", job=JOB)["history"]


VIEWS = (
    ("job_list", {}),
    ("job_list", {"text": "blue"}),
    ("job", {"job": JOB}),
    ("report", {"job": JOB}),
    ("evidence", {"job": JOB}),
    ("waiting", {}),
    ("state", {}),
)


@pytest.fixture
def log(core):
    job = Driver(core).faulted()
    job.start_exchange()
    return job.events


def test_a_log_with_ids_of_any_letters_is_shown_whole(core, log):
    kept(core, changed(changed(log, RIGHT, "ä"), '"v1', '"w ü'))
    draw_all(core)
    assert core("unit", unit="w ü.ä")["id"] == "w ü.ä"
    assert core("job", job=JOB)["step"]["id"] == "pull"
    kept(core, changed(log[:-1], RIGHT, "ä"))
    assert core("job", job=JOB)["moves"]


def test_a_log_with_a_time_beyond_all_calendars_is_shown_whole(core, log):
    events = copy.deepcopy(log)
    for event in events[-2:]:
        event["at"] = 9_000_000_000_000_000
    kept(core, events)
    draw_all(core)


@pytest.mark.parametrize(
    ("kind", "data"),
    [
        ("reach_set", {"position": RIGHT, "minutes": BEYOND}),
        ("money_set", {"labour_per_hour": BEYOND, "part_price": BEYOND, "wrong_purchase": BEYOND}),
        ("comeback_set", {"factor": BEYOND, "months": BEYOND}),
        ("rates_set", {"rates_ppm": {"unit": 0, "shows": 1_000_000}, "confidence_ppm": 999_999}),
    ],
)
def test_a_log_with_numbers_at_their_end_is_shown_whole(core, log, kind, data):
    job = Driver(core)
    kept(core, log)
    job.events, job.seq, job.prev = list(log), len(log), "0" * 64
    job.force(kind, **data)
    draw_all(core)
    assert core("unit", unit=home(RIGHT))


@pytest.mark.parametrize(
    ("field", "value", "wanted"),
    [
        ("at", 9_000_000_000_000_000, "a time before the year 9999"),
        ("at", envelope.TOO_LATE, "a time before the year 9999"),
        ("job", "jö", ID),
        ("kind", "k i", ID),
    ],
)
def test_what_comes_in_has_bounds_that_what_was_kept_has_not(core, field, value, wanted):
    event = {**Driver(core).begin().events[0], field: value}
    assert core("envelope", event=event)  # well-formed, and folded where it was kept
    with refusing(f"event.{field}: found .*, wanted {wanted}"):
        envelope.bound(event)


HALF = "dirty \ud83d"  # half of a character, as a keyboard leaves it that was cut off


@pytest.mark.parametrize("kind", ["cleaned", "unit_added"])
def test_half_a_character_is_refused_by_the_name_of_its_field(core, kind):
    job = Driver(core).begin()
    data = {"cleaned": {"position": RIGHT, "note": HALF}, "unit_added": {**added("u1"), "serial": HALF}}[kind]
    stop = job.check({"kind": kind, "data": data})
    assert stop["rule"] == "bounds"
    assert stop["fault"]["field"] == {"cleaned": "data.note", "unit_added": "data.serial"}[kind]


@pytest.mark.parametrize(
    ("op", "arguments", "field"),
    [
        ("unit", {"unit": HALF}, "unit"),
        ("unit", {"code": HALF}, "code"),
        ("job", {"job": HALF}, "job"),
        ("vehicle", {"vehicle": HALF}, "vehicle"),
        ("scan", {"text": HALF, "how": "typed"}, "text"),
        ("code", {"text": HALF}, "text"),
        ("others", {"job": JOB, "people": [{"name": HALF, "doing": "", "positions": []}]}, "people[0].name"),
    ],
)
def test_half_a_character_in_a_question_is_refused_by_the_name_of_its_argument(core, op, arguments, field):
    Driver(core).begin()
    with pytest.raises(CoreError, match="whole Unicode characters") as refused:
        core(op, **arguments)
    assert str(refused.value).startswith(f"{field}: ")


@pytest.mark.parametrize("op", ["job_list", "vehicles", "find"])
def test_a_search_leaves_half_a_character_out(core, op):
    Driver(core).begin()
    assert core(op, text="estate \ud83d") == core(op, text="estate ")


def test_whole_characters_of_two_halves_and_their_spelling_stay(core):
    job = Driver(core).begin()
    assert (
        job.check({"kind": "cleaned", "data": {"position": RIGHT, "note": "dry \U0001f600 \\ud83d"}}) is None
    )


@pytest.mark.parametrize(
    ("unit", "code", "name"),
    [
        ("u1", "JRMMA", "swaptrail-record-JRMMA.zip"),
        ("u1", "", "swaptrail-record-u1.zip"),
        ("u1", 'J"\r\nX: y', "swaptrail-record-u1.zip"),
        ("u1", "WM3F2@north.example", "swaptrail-record-u1.zip"),
        ("../ä", "\u202eJRMMA", "swaptrail-record.zip"),
    ],
)
def test_a_record_goes_by_a_name_that_any_file_may_have(unit, code, name):
    """A code may be any text, also another shop's: a server failed as it wrote the name into an answer."""
    data = {**added(unit), "code": code}
    [event] = chained([{"kind": "unit_added", "data": data, "job": None, "at": START}])
    host = Host()
    assert json.loads(host.call(json.dumps({"op": "reset", "events": [{"event": event}]})))["ok"]

    assert file_name(host.fold.state, unit, "") == name
