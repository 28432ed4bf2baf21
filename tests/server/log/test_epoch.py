"""A log that went back begins another epoch: by its mark, by what a phone has seen, by `rejoin`."""

import json
import shutil
import sqlite3
import threading
from contextlib import closing

import pytest

from server.commands.cli import main
from server.core.codes.labels import share_of
from server.log import epoch
from server.log import mark
from server.phones.installation import installation_id
from server.phones.signing import signer
from server.serving.serve import held_open
from server.storage import DataFolder
from tests.server.phone import assert_refused


def end(db):
    return db.conn.execute("SELECT n, hash FROM events ORDER BY n DESC LIMIT 1").fetchone()


def copy_of(folder, to):
    """Copies the database as it stands, without what is beside it."""
    with closing(folder.open()) as db, closing(sqlite3.connect(to)) as copy:
        db.conn.backup(copy)
    return to


def put_back(folder, copy):
    for file in folder.root.glob("swaptrail.db*"):
        file.unlink()
    shutil.copy(copy, folder.database)


def epoch_of(folder):
    with closing(folder.open()) as db:
        return installation_id(db)


def recorded(phone, count):
    for _ in range(count):
        phone.record()
    return phone.synced()


# --- the mark, and what `serve` makes of it


def test_a_database_that_came_back_a_little_behind_begins_another_epoch(phone, folder, tmp_path, capsys):
    recorded(phone, 3)
    copy = copy_of(folder, tmp_path / "copy.db")
    recorded(phone, 2)
    before = epoch_of(folder)
    with held_open(folder):
        pass

    put_back(folder, copy)
    capsys.readouterr()
    with held_open(folder):
        assert capsys.readouterr().out == (
            f"The database in {folder.root} is older than it was when it was served last: "
            "entry 5 is not in it. Phones will send again what they have.\n"
        )
        assert epoch_of(folder) != before
        assert share_of(epoch_of(folder)) != share_of(before)

    after = epoch_of(folder)
    with held_open(folder):
        assert capsys.readouterr().out == ""
        assert epoch_of(folder) == after


def test_a_database_that_came_back_and_grew_past_its_mark_is_noticed(phone, new_phone, folder, tmp_path):
    recorded(phone, 2)
    other = new_phone("d00000000000000bb", "Kim")
    copy = copy_of(folder, tmp_path / "copy.db")
    recorded(phone, 1)
    with held_open(folder):
        pass
    put_back(folder, copy)
    before = epoch_of(folder)
    recorded(other, 5)  # by a command, or by an older server, that asks for no mark

    with held_open(folder):
        assert epoch_of(folder) != before


def test_a_mark_behind_its_database_is_no_alarm(phone, folder):
    """A server that was killed has marked less than it committed."""
    recorded(phone, 2)
    with held_open(folder):
        pass
    recorded(phone, 3)
    before = epoch_of(folder)

    with held_open(folder):
        assert epoch_of(folder) == before
    with closing(folder.open()) as db:
        assert mark.read(folder.mark) == end(db)


def test_a_mark_of_another_installation_alarms_once(phone, folder):
    """Somebody put back the files of two folders in one: which of them is older, nothing tells."""
    recorded(phone, 2)
    folder.mark.write_text(json.dumps({"n": 2, "hash": "ab" * 32}))
    epochs = [epoch_of(folder)]
    for _ in range(2):
        with held_open(folder):
            epochs.append(epoch_of(folder))
    assert epochs[0] != epochs[1] == epochs[2]
    assert phone.synced()["refused"] == []


@pytest.mark.parametrize("content", [None, b"", b"{", b"[1]", b'{"n": "x", "hash": 1}', b"\xff" * 100])
def test_a_mark_that_cannot_be_read_is_no_alarm_and_is_written_anew(phone, folder, content):
    recorded(phone, 2)
    if content is not None:
        folder.mark.write_bytes(content)
    before = epoch_of(folder)

    with held_open(folder):
        assert epoch_of(folder) == before

    with closing(folder.open()) as db:
        assert mark.read(folder.mark) == end(db)


def test_the_mark_follows_while_the_folder_is_served(phone, folder, db, monkeypatch):
    """Also what another process takes in; and it never stands ahead of what is committed."""
    monkeypatch.setattr(mark, "SECONDS", 0.01)
    with held_open(folder):
        for _ in range(20):
            recorded(phone, 1)
            marked = mark.read(folder.mark)
            assert marked is None or marked.n <= end(db)[0]
        waited = threading.Event()
        while mark.read(folder.mark) != end(db):
            waited.wait(0.01)
    assert folder.mark.stat().st_mode & 0o777 == 0o600


def test_a_mark_that_cannot_be_written_stops_nothing(phone, folder):
    folder.mark.mkdir()
    with held_open(folder):
        assert recorded(phone, 1)["refused"] == []
    with held_open(folder):
        assert recorded(phone, 1)["refused"] == []


def test_an_empty_database_behind_a_mark_alarms_once(phone, folder, tmp_path):
    copy = copy_of(folder, tmp_path / "copy.db")
    recorded(phone, 2)
    with held_open(folder):
        pass
    put_back(folder, copy)
    epochs = [epoch_of(folder)]
    for _ in range(2):
        with held_open(folder):
            epochs.append(epoch_of(folder))
    assert epochs[0] != epochs[1] == epochs[2]


# --- what a phone has seen


def seen(answer, **other):
    """Returns what a phone says of where an answer left it; `other` is what it says otherwise."""
    last = answer["events"][-1]
    place = {"epoch": answer["installation"], "hash": last["hash"], "received_at": last["received_at"]}
    return {"cursor": answer["cursor"], "seen": {**place, "signature": answer["place_signature"], **other}}


@pytest.mark.parametrize("others", [0, 1, 5])
def test_a_phone_that_has_seen_a_longer_or_another_log_makes_all_start_over(
    phone, new_phone, folder, tmp_path, others
):
    """The whole folder came back, and nobody said so: nothing in it tells."""
    other = new_phone("d00000000000000bb", "Kim")
    recorded(phone, 3)
    copy = copy_of(folder, tmp_path / "copy.db")
    known = recorded(phone, 2)
    before = known["installation"]
    put_back(folder, copy)
    if others:
        recorded(other, others)

    answer = phone.sync([], **seen(known)).get_json()

    assert answer["installation"] != before
    assert epoch_of(folder) == answer["installation"]
    for _ in range(2):  # said once more, it is an old epoch's
        assert phone.sync([], **seen(known)).get_json()["installation"] == answer["installation"]


def test_a_log_that_went_on_apart_is_told_also_by_the_same_entry_in_the_same_place(
    phone, new_phone, folder, tmp_path
):
    """Its sender had no answer, and sent it again: but another entry came before it this time."""
    other = new_phone("d00000000000000bb", "Kim")
    recorded(other, 2)
    third = new_phone("d00000000000000ee", "Nora")
    copy = copy_of(folder, tmp_path / "copy.db")
    recorded(other, 1)
    last = phone.record()
    known = phone.synced()
    assert (known["cursor"], known["events"][-1]["hash"]) == (4, last["hash"])
    put_back(folder, copy)
    recorded(third, 1)
    again = phone.synced()
    assert (again["cursor"], again["events"][-1]["hash"]) == (4, last["hash"])

    assert other.sync([], **seen(known)).get_json()["installation"] != known["installation"]


def test_what_a_phone_only_says_makes_that_phone_alone_start_over(phone, new_phone, tmp_path):
    """Nothing that it makes up, repeats or takes from elsewhere begins an epoch, however often it is said."""
    known, more = recorded(phone, 3), recorded(phone, 1)
    other = new_phone("d00000000000000bb", "Kim")
    elsewhere = DataFolder(tmp_path / "elsewhere")
    elsewhere.prepare()
    made_up = {"hash": "0" * 64, "received_at": 7}
    of_another = signer(elsewhere).sign(epoch._text(known["installation"], 4, *made_up.values()))
    claims = [
        seen(more, hash="0" * 64),
        seen(more, received_at=7),
        seen(more, **made_up, signature=known["place_signature"]),
        seen(more, **made_up, signature=of_another),
        seen(more, hash="0" * 64, signature=more["place_signature"].upper()),
        seen(more) | {"cursor": 5},
        seen(more, signature="") | {"cursor": 5},
        {"cursor": 4, "seen": {"epoch": known["installation"], "hash": "0" * 64}},
        {"cursor": 900, "seen": {"epoch": known["installation"], "hash": ""}},
    ]
    for claim in claims * 2:
        answer = phone.sync([], **claim).get_json()
        # With a cursor that went back a phone sends all that it has again, and fetches everything.
        assert (answer["cursor"], answer["events"], answer["more"]) == (0, [], True), claim
        assert answer["installation"] == known["installation"]
    assert other.sync([], **seen(more)).get_json()["cursor"] == 4


def test_a_phone_that_knows_this_log_starts_nothing(phone, folder):
    known = recorded(phone, 3)
    recorded(phone, 2)
    stranger = {"cursor": 900, "seen": {"epoch": "of another folder", "hash": "0" * 64}}
    forgetful = {"cursor": 3, "seen": {"epoch": known["installation"], "hash": ""}}
    hash_alone = {"epoch": known["installation"], "hash": known["events"][-1]["hash"]}
    of_an_older_app = {"cursor": 3, "seen": hash_alone}
    for place in (seen(known), stranger, forgetful, of_an_older_app, {"cursor": 900}):
        assert phone.sync([], **place).get_json()["installation"] == known["installation"]


def test_a_phone_of_the_epoch_before_begins_no_further_one(phone, folder, capsys):
    known = recorded(phone, 2)
    assert main(["rejoin", "--data", str(folder.root)]) == 0
    after = epoch_of(folder)
    assert after != known["installation"]

    place = {"cursor": 9, "seen": {"epoch": known["installation"], "hash": "0" * 64}}
    assert phone.sync([], **place).get_json()["installation"] == after


@pytest.mark.parametrize(
    ("value", "field"),
    [
        ("x", "seen"),
        ([], "seen"),
        ({}, "epoch"),
        ({"epoch": 1, "hash": ""}, "epoch"),
        ({"epoch": "", "hash": "0" * 81}, "hash"),
        ({"epoch": "", "hash": "", "received_at": -1}, "received_at"),
        ({"epoch": "", "hash": "", "received_at": True}, "received_at"),
        ({"epoch": "", "hash": "", "signature": 1}, "signature"),
        ({"epoch": "", "hash": "", "signature": "0" * 129}, "signature"),
    ],
)
def test_what_is_no_place_in_a_log_is_refused(phone, value, field):
    assert_refused(phone.sync([], seen=value), 400, field)


# --- rejoin


def test_rejoin_begins_another_epoch_and_says_so(phone, folder, capsys):
    recorded(phone, 3)
    before = epoch_of(folder)

    assert main(["rejoin", "--data", str(folder.root)]) == 0

    assert capsys.readouterr().out == (
        f"{folder.root} is marked as come back, with 3 entries. "
        "Phones notice, send again what they have and fetch everything.\n"
    )
    after = epoch_of(folder)
    assert after != before
    assert phone.synced()["installation"] == after
    with held_open(folder):
        assert epoch_of(folder) == after


def test_rejoin_of_a_folder_without_data_is_refused(tmp_path, capsys):
    assert main(["rejoin", "--data", str(tmp_path / "nowhere")]) == 2
    assert not (tmp_path / "nowhere").exists()
    assert capsys.readouterr().err.count("\n") == 1


def test_a_mark_is_one_line_that_is_overwritten(phone, folder, db):
    sizes = set()
    for _ in range(12):
        recorded(phone, 1)
        mark.write(db, folder)
        sizes.add(folder.mark.stat().st_size)
        assert json.loads(folder.mark.read_text()) == {"n": end(db)[0], "hash": end(db)[1]}
    assert len(sizes) == 1
