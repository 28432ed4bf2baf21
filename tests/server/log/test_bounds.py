"""What comes in stays within what every phone can draw; what is kept already is never refused for it."""

import pytest

from server.clock import now_ms
from server.core.log import envelope
from server.log import intake
from server.log.events import receive
from tests.server.phone import entry_of

POSITION = {"id": "nose", "name": "nose", "group": "rear", "edge": "rear", "reach_minutes": 3}
OPENED = {
    "vehicle": {"id": "v1", "name": "Blue estate", "vin": ""},
    "complaint": "",
    "layout": "",
    "part": "PS-1",
    "positions": [POSITION],
}


def with_field(entry, **fields):
    return entry_of({**entry["event"], **fields})


@pytest.mark.parametrize(
    ("fields", "field", "wanted"),
    [
        ({"at": 9_000_000_000_000_000}, "event.at", "a time before the year 9999"),
        ({"at": envelope.TOO_LATE}, "event.at", "a time before the year 9999"),
        ({"job": "jö"}, "event.job", 'letters from a to z, digits, "-", "_" and "."'),
        ({"kind": "no kind"}, "event.kind", 'letters from a to z, digits, "-", "_" and "."'),
        (
            {"kind": "job_opened", "data": {**OPENED, "positions": [{**POSITION, "id": "ä"}]}},
            "data.positions[0].id",
            'letters from a to z, digits, "-", "_" and "."',
        ),
        (
            {"kind": "reach_set", "data": {"position": "nose", "minutes": 2**53 - 1}},
            "data.minutes",
            "a whole number of at most 1,000,000,000",
        ),
    ],
)
def test_an_entry_that_some_phone_could_not_draw_is_refused_by_its_field(phone, db, fields, field, wanted):
    phone.record()
    entry = with_field(phone.entries[0], **fields)

    refused = phone.synced([entry])["refused"]

    assert [(each["seq"], each["code"]) for each in refused] == [(1, "malformed")]
    assert refused[0]["reason"].startswith(f"{field}: found ")
    assert refused[0]["reason"].endswith(f"wanted {wanted}")
    assert db.table("events").count == 0


def test_half_a_character_is_refused(phone, db):
    phone.record("cleaned", {"position": "nose", "note": ""})
    event = {**phone.entries[0]["event"], "data": {"position": "nose", "note": "dirty \ud83d"}}

    refused = phone.synced([{"event": event, "hash": phone.entries[0]["hash"]}])["refused"]

    assert "wanted whole Unicode characters" in refused[0]["reason"]
    assert db.table("events").count == 0


@pytest.mark.parametrize("at", [0, envelope.TOO_LATE - 1])
def test_the_first_and_the_last_time_come_in(phone, at):
    phone.record()
    assert phone.synced([with_field(phone.entries[0], at=at)])["refused"] == []


def test_what_was_kept_before_the_bounds_is_sent_on_and_sent_again_without_harm(phone, db, monkeypatch):
    phone.record()
    bad = with_field(phone.entries[0], at=9_000_000_000_000_000)
    monkeypatch.setattr(intake, "judge_bounds", lambda event: None)
    receive(db, [{**bad, "relayed": True}], None, now_ms())
    monkeypatch.undo()

    answer = phone.synced([bad])

    assert answer["refused"] == []
    assert [entry["event"] for entry in answer["events"]] == [bad["event"]]


def test_a_half_valid_entry_of_a_known_kind_is_kept_and_listed_as_not_understood(phone, db):
    phone.record("job_opened", OPENED)
    phone.record("cleaned", {"position": 7, "note": "\u202e"})

    assert phone.synced()["refused"] == []
    assert db.table("events").count == 2
