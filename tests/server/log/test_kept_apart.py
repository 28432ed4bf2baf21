"""What is kept apart of phones that nobody proved is bounded, for each phone that brings it and for all."""

import json
import re

import pytest

from server.keeping import make_room
from server.keeping.verify.data_folder import FOLDER
from server.log import brought
from server.log import unproven
from server.log.intake import hash_of
from server.storage import writing
from tests.server.phone import NOW
from tests.server.phone import entry_after
from tests.server.phone import entry_of
from tests.server.phone import job_opened
from tests.server.signed_phone import SignedPhone
from tests.server.signed_phone import relayed

MARA, NORA, MALLORY = "d00000000000000aa", "d00000000000000bb", "d00000000000000cc"
ROOM = 12


@pytest.fixture(autouse=True)
def little_room(monkeypatch):
    monkeypatch.setattr(unproven, "MOST_ENTRIES", ROOM)


@pytest.fixture
def new_signed(app, let_in):
    return lambda device, name: let_in(SignedPhone(app, device), name, "bench")


@pytest.fixture
def mallory(new_signed):
    return new_signed(MALLORY, "Mallory")


@pytest.fixture
def nora(new_signed):
    return new_signed(NORA, "Nora")


def strangers(count, first=0, note=""):
    """Return entries in ever new device ids, as a phone passes them on."""
    entries = []
    for number in range(first, first + count):
        data = job_opened() if not note else {"position": "rear-left", "note": note}
        kind = "cleaned" if note else "job_opened"
        entries.append(entry_after([], f"d{number + 4096:016x}", kind, data))
    return relayed(entries)


def codes(answer):
    return [each["code"] for each in answer["refused"]]


def count(db, table="unproven"):
    return db.conn.execute(f"SELECT count(*) FROM {table}").fetchone()[0]


def test_a_flood_of_new_device_ids_is_refused_once_the_room_of_its_phone_is_full(mallory, nora, db):
    answer = mallory.synced(strangers(ROOM + 3))

    assert codes(answer) == ["unproven"] * ROOM + ["no_room"] * 3
    refusal = answer["refused"][-1]
    assert "no more room" in refusal["reason"]
    assert refusal["field"] == "events"
    assert re.fullmatch(rf"{ROOM} entries, [0-9]+ bytes, that nothing proves", refusal["found"])
    assert refusal["wanted"] == f"at most {ROOM} entries, {unproven.MOST_BYTES} bytes"
    assert "field" not in answer["refused"][0]
    assert codes(mallory.synced(strangers(5, first=100))) == ["no_room"] * 5
    assert count(db) == ROOM
    # What is kept stays kept, and another phone has its own room.
    assert codes(mallory.synced(strangers(ROOM))) == ["unproven"] * ROOM
    assert codes(nora.synced(strangers(2, first=200))) == ["unproven"] * 2
    mallory.record("job_opened", job_opened())
    assert mallory.synced()["refused"] == []


def test_what_is_kept_apart_is_bounded_in_bytes_too(mallory, db, monkeypatch):
    monkeypatch.setattr(unproven, "MOST_BYTES", 30_000)
    entries = strangers(ROOM, note="é" * 1900)  # two bytes a letter

    refused = codes(mallory.synced(entries))

    kept = db.conn.execute("SELECT sum(length(CAST(body AS BLOB))) FROM unproven").fetchone()[0]
    assert 26_000 < kept <= 30_000
    assert refused.count("no_room") == ROOM - count(db) > 0


def test_all_phones_together_have_a_bounded_room_and_the_refusal_says_what_is_kept(
    mallory, nora, monkeypatch
):
    monkeypatch.setattr(unproven, "MOST_ENTRIES_OF_ALL", ROOM + 3)
    mallory.synced(strangers(ROOM))

    answer = nora.synced(strangers(5, first=200))

    assert codes(answer) == ["unproven"] * 3 + ["no_room"] * 2
    reason = answer["refused"][-1]["reason"]
    assert f"keeps {ROOM + 3} such entries" in reason
    assert f"room for {ROOM + 3}," in reason
    assert answer["refused"][-1]["found"].startswith(f"{ROOM + 3} entries, ")
    assert (
        answer["refused"][-1]["wanted"] == f"at most {ROOM + 3} entries, {unproven.MOST_BYTES_OF_ALL} bytes"
    )
    # What the phone itself recorded has nothing to do with it.
    nora.record("job_opened", job_opened())
    assert nora.synced()["refused"] == []


def test_all_phones_together_are_bounded_in_bytes_too(mallory, nora, db, monkeypatch):
    monkeypatch.setattr(unproven, "MOST_BYTES_OF_ALL", 8 * 4200)
    mallory.synced(strangers(6, note="é" * 1900))

    refused = codes(nora.synced(strangers(6, first=200, note="é" * 1900)))

    assert refused == ["unproven"] * 2 + ["no_room"] * 4
    assert count(db) == 8


def test_a_chain_that_its_phone_signed_is_laid_by_where_all_room_is_taken(
    mallory, nora, new_signed, monkeypatch
):
    monkeypatch.setattr(unproven, "MOST_ENTRIES_OF_ALL", ROOM)
    mara = new_signed(MARA, "Mara")
    mara.synced([])
    for _ in range(4):
        mara.record("job_opened", job_opened())
    mallory.synced(strangers(ROOM))
    nora.synced([])
    nora.certificates[MARA], nora.heads[MARA] = mara.certificates[MARA], mara.signed_head()
    chain = relayed(mara.entries)

    nora.sync(chain[:2], only_prove=True)

    assert nora.synced(chain)["refused"] == []


def test_what_was_kept_before_sizes_were_noted_counts_with_its_size(folder, db):
    with writing(db):
        db.conn.execute("DELETE FROM _sqlite_migrations WHERE name = 'note_the_size_of_what_is_kept_apart'")
        for table in ("quarantine", "unproven"):
            db.conn.execute(f"DROP INDEX {table}_by_bringer")
            db.conn.execute(f"ALTER TABLE {table} DROP COLUMN size")
            db.conn.execute(f"CREATE INDEX {table}_by_bringer ON {table} (brought_by)")
        db.conn.execute(
            "INSERT INTO unproven (device, seq, hash, body, at) VALUES ('d0', 1, 'h', ?, 0)", ["é" * 10]
        )

    folder.prepare()

    assert db.conn.execute("SELECT size FROM unproven").fetchone() == (20,)


def test_a_flood_is_set_aside_at_once_and_taken_back(mallory, nora):
    sent = strangers(ROOM)
    mallory.synced(sent)
    nora.synced(strangers(1, first=1000))
    listed = nora.get("/api/brought").get_json()
    [flood] = [each for each in listed["bringers"] if each["brought_by"] == "Mallory"]
    assert (flood["devices"], flood["entries"], flood["at"]) == (ROOM, ROOM, None)
    assert listed["set_aside"] == []

    assert nora.post("/api/brought/set-aside", {"by": flood["by"]}).get_json() == {"set_aside": ROOM}

    after = nora.get("/api/brought").get_json()
    assert [line["brought_by"] for line in after["brought"]] == ["Nora"]
    [aside] = after["set_aside"]
    assert (aside["by"], aside["brought_by"], aside["entries"]) == (flood["by"], "Mallory", ROOM)
    # They take their room as before, so nobody can flood on.
    assert codes(mallory.synced(strangers(1, first=500))) == ["no_room"]

    back = nora.post("/api/brought/take-back", {"by": aside["by"], "at": aside["at"]}).get_json()

    assert back == {"taken_back": ROOM}
    assert nora.get("/api/brought").get_json() == listed


def test_what_is_for_the_other_role_is_neither_set_aside_nor_taken_back(mallory, app, let_in):
    clerk = let_in(SignedPhone(app, NORA), "Cleo", "counter")
    mallory.synced(strangers(3))
    [flood] = mallory.get("/api/brought").get_json()["bringers"]

    assert clerk.post("/api/brought/set-aside", {"by": flood["by"]}).get_json() == {"set_aside": 0}
    assert mallory.post("/api/brought/set-aside", {"by": flood["by"]}).get_json() == {"set_aside": 3}
    [aside] = mallory.get("/api/brought").get_json()["set_aside"]
    asked = {"by": aside["by"], "at": aside["at"]}
    assert clerk.get("/api/brought").get_json()["set_aside"] == []
    assert clerk.post("/api/brought/take-back", asked).get_json() == {"taken_back": 0}
    assert mallory.post("/api/brought/take-back", asked).get_json() == {"taken_back": 3}


@pytest.mark.parametrize("path", ["set-aside", "take-back"])
@pytest.mark.parametrize("by", [-1, True, "1", None, 2**63, 1.5, [1]])
def test_what_names_no_bringer_is_refused(mallory, path, by):
    answer = mallory.post(f"/api/brought/{path}", {"by": by, "at": 0})
    assert answer.status_code == 400
    assert answer.get_json()["error"]["field"] == "by"


def test_whoever_runs_the_server_makes_room_and_has_it_all_in_a_file(
    mallory, nora, new_signed, folder, db, tmp_path, said
):
    mara = new_signed(MARA, "Mara")
    mara.record("job_opened", job_opened())
    mara.synced()
    forks = [entry_after([], MARA, "cleaned", {"position": "rear-left", "note": str(n)}) for n in range(2)]
    mallory.synced([*strangers(ROOM - 4), *relayed(forks)])
    [flood] = nora.get("/api/brought").get_json()["bringers"]
    nora.post("/api/brought/set-aside", {"by": flood["by"]})
    mallory.synced(strangers(1, first=100))  # waits, and is not moved
    moved = {
        digest
        for table in ("quarantine", "unproven WHERE set_aside_at IS NOT NULL")
        for (digest,) in db.conn.execute(f"SELECT hash FROM {table}")
    }
    out = tmp_path / "aside.txt"

    status, words = said("make-room", "--out", out, "--data", folder.root)[:2]

    assert status == 0, words
    lines = [json.loads(line) for line in out.read_text().splitlines()]
    assert {line["hash"] for line in lines} == moved
    assert len(lines) == len(moved) == ROOM - 2
    assert all(hash_of(line["body"]) == line["hash"] for line in lines)
    assert {line["brought_by"] for line in lines} == {"Mallory"}
    assert (count(db, "quarantine"), count(db)) == (0, 1)
    assert codes(mallory.synced(strangers(ROOM, first=300))) == ["unproven"] * (ROOM - 1) + ["no_room"]
    assert FOLDER.first_fault(folder.root) is None
    assert said("make-room", "--out", out, "--data", folder.root)[0] == 2, "nothing is written over"
    assert said("make-room", "--out", tmp_path / "more.txt", "--data", folder.root)[0] == 0
    assert not (tmp_path / "more.txt").exists(), "nothing is set aside, so no file says that it holds it"


def test_no_room_is_made_where_the_file_cannot_be_written(mallory, folder, db, tmp_path, monkeypatch):
    mallory.synced(strangers(3))
    [flood] = mallory.get("/api/brought").get_json()["bringers"]
    mallory.post("/api/brought/set-aside", {"by": flood["by"]})

    def full(path):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("server.keeping.new_file.sync_file", full)
    with pytest.raises(OSError, match="No space"):
        make_room.run(folder.root, tmp_path / "aside.txt")

    assert count(db) == 3
    assert not (tmp_path / "aside.txt").exists()


def test_chains_that_left_the_kept_one_take_the_same_room(mallory, new_signed, db):
    mara = new_signed(MARA, "Mara")
    mara.record("job_opened", job_opened())
    mara.synced()
    others = [entry_after([], MARA, "cleaned", {"position": "rear-left", "note": str(n)}) for n in range(99)]

    refused = codes(mallory.synced(relayed(others[: ROOM + 4])))

    assert refused == ["forked"] * ROOM + ["no_room"] * 4
    assert (count(db, "quarantine"), count(db)) == (ROOM, 0)
    assert codes(mallory.synced(strangers(2))) == ["no_room"] * 2
    assert codes(mallory.synced(relayed(others[:1]))) == ["forked"]  # it is kept already


def test_accepting_makes_room_and_nothing_that_waits_is_lost(mallory, nora, db):
    sent = strangers(ROOM + 2)
    mallory.synced(sent)
    for line in nora.get("/api/brought").get_json()["brought"][:2]:
        accepted = nora.post(f"/api/brought/{line['device']}/accept", {"by": line["by"]}).get_json()
        assert accepted == {"accepted": 1, "refused": []}

    assert codes(mallory.synced(sent[-2:])) == ["unproven"] * 2
    bodies = db.conn.execute("SELECT body FROM events UNION ALL SELECT body FROM unproven")
    assert {json.loads(body)["device"] for (body,) in bodies} == {each["event"]["device"] for each in sent}


def test_a_phone_makes_no_room_by_setting_its_own_flood_aside(mallory, db):
    mallory.synced(strangers(ROOM))
    for line in mallory.get("/api/brought").get_json()["brought"]:
        mallory.post(f"/api/brought/{line['device']}/set-aside", {"by": line["by"]})

    assert codes(mallory.synced(strangers(1, first=100))) == ["no_room"]


def test_a_signed_chain_longer_than_the_room_is_still_laid_by_and_proven(mallory, nora, new_signed, db):
    mara = new_signed(MARA, "Mara")
    mara.synced([])
    mara.record("job_opened", job_opened())
    for _ in range(2 * ROOM):
        mara.record()
    nora.synced(strangers(ROOM))
    for bringer in (mallory, nora):  # one with room, one without
        bringer.synced([])
        bringer.certificates[MARA], bringer.heads[MARA] = mara.certificates[MARA], mara.signed_head()
    chain = relayed(mara.entries)

    for bringer in (mallory, nora):
        for start in range(0, len(chain), 10):
            bringer.sync(chain[start : start + 10], only_prove=True)
    assert nora.synced(chain)["refused"] == []

    assert db.conn.execute("SELECT count(*) FROM events WHERE device = ?", [MARA]).fetchone() == (len(chain),)


def test_under_a_signed_head_only_one_chain_is_laid_by(mallory, new_signed, db):
    mara = new_signed(MARA, "Mara")
    mara.synced([])
    for _ in range(2):
        mara.record("job_opened", job_opened())
    mallory.synced([])
    mallory.certificates[MARA], mallory.heads[MARA] = mara.certificates[MARA], mara.signed_head()
    forged = relayed(
        [entry_after([], MARA, "cleaned", {"position": "rear-left", "note": str(n)}) for n in range(3 * ROOM)]
    )

    mallory.sync(forged, only_prove=True)

    assert count(db) == ROOM + 1
    assert mallory.synced(relayed(mara.entries))["refused"] == []


def test_of_a_chain_that_waits_the_list_says_how_long_it_is_and_from_when_to_when(mallory, nora):
    chain = []
    for later in range(3):
        event = entry_after(chain, "d00000000000000dd", "job_opened", job_opened())["event"]
        chain.append(entry_of({**event, "at": NOW + later}))

    mallory.synced(relayed(chain))

    [line] = nora.get("/api/brought").get_json()["brought"]
    assert (line["entries"], line["first_at"], line["last_at"]) == (3, NOW, NOW + 2)


def test_a_flood_hides_nobody_elses_from_the_list(mallory, nora, monkeypatch):
    monkeypatch.setattr(brought, "MOST_LINES", 3)
    mallory.synced(strangers(ROOM))
    nora.synced(strangers(1, first=1000))

    lines = nora.get("/api/brought").get_json()["brought"]

    assert [line["brought_by"] for line in lines] == ["Mallory"] * 3 + ["Nora"]


def test_a_phone_that_signs_an_endless_chain_of_its_own_fills_its_rooms_and_no_more(mallory, db, monkeypatch):
    monkeypatch.setattr(unproven, "MOST_LAID_BY", 2 * ROOM)
    mallory.synced([])
    endless = [
        entry_after([{"hash": "ab" * 32}], MALLORY, "cleaned", {"position": "x", "note": ""}, seq=seq)
        for seq in range(2, 5 * ROOM)
    ]
    heads = [mallory.signed_head([]), mallory.key.head(MALLORY, 10**6, "cd" * 32)]

    mallory.sync(relayed(endless), only_prove=True, signed_heads=heads)
    answer = mallory.sync(relayed(endless), signed_heads=heads).get_json()

    assert count(db) == 3 * ROOM
    assert codes(answer).count("no_room") == len(endless) - 3 * ROOM


def test_what_is_laid_by_is_bounded_in_bytes_too(mallory, db, monkeypatch):
    monkeypatch.setattr(unproven, "MOST_BYTES_LAID_BY", 3 * 4200)
    mallory.synced([])
    endless = [
        entry_after([{"hash": "ab" * 32}], MALLORY, "cleaned", {"position": "x", "note": "é" * 1900}, seq=seq)
        for seq in range(2, 12)
    ]
    heads = [mallory.signed_head([]), mallory.key.head(MALLORY, 10**6, "cd" * 32)]

    mallory.sync(relayed(endless), only_prove=True, signed_heads=heads)

    laid_by = db.conn.execute("SELECT count(*) FROM unproven WHERE laid_by = 1").fetchone()
    assert laid_by == (3,)
