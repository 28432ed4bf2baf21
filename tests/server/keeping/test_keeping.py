"""backup, restore, verify, rebuild: what is kept is what was recorded, and a change is found and named."""

import hashlib
import json
import secrets
import shutil
import sqlite3
import threading
import time
import zipfile
from contextlib import closing

import pytest

from server.commands.cli import main
from server.core.codes import labels
from server.core.log import canon
from server.labelling import store
from server.log import events
from server.photos import store as photo_store
from server.photos.sweep import KEPT_DAYS
from server.photos.sweep import sweep
from server.photos.sweep import sweep_files
from server.storage import DataFolder
from server.storage import writing
from tests.server.phone import NOW
from tests.server.phone import entry_after
from tests.server.phone import job_opened
from tests.server.phone import jpeg

DEVICE, OTHER = "d00000000000000aa", "d00000000000000bb"
JOB = "j000000000001"
PHOTO, SECOND = jpeg(), jpeg(colour=(10, 20, 30))


def digest_of(data):
    return hashlib.sha256(data).hexdigest()


def photo_data(data):
    return {
        "sha256": digest_of(data), "mime": "image/jpeg", "bytes": len(data), "width": 64, "height": 48,
        "shows": "work", "position": "", "unit": "",
    }  # fmt: skip


@pytest.fixture
def data(tmp_path):
    """A data folder with two devices' entries and two photos."""
    folder = DataFolder(tmp_path / "data")
    folder.prepare()
    folder.secret_key()
    mine, others = [], []
    mine.append(entry_after(mine, DEVICE, "job_opened", job_opened(), JOB))
    for picture in (PHOTO, SECOND):
        mine.append(entry_after(mine, DEVICE, "photo_taken", photo_data(picture), JOB))
    for number in range(4):
        others.append(
            entry_after(others, OTHER, "cleaned", {"position": "rear-left", "note": f"x{number}"}, JOB)
        )
    mine.append(entry_after(mine, DEVICE, "corrected", {"device": OTHER, "seq": 2, "reason": "slip"}, None))
    with closing(folder.open()) as db:
        assert events.receive(db, mine[:3] + others + mine[3:], None, NOW).refused == []
        for picture in (PHOTO, SECOND):
            photo_store.keep(db, folder.photos, digest_of(picture), picture, NOW)
    return folder.root


@pytest.fixture
def backup(data, tmp_path):
    assert main(["backup", str(tmp_path / "b.zip"), "--data", str(data)]) == 0
    return tmp_path / "b.zip"


def tamper(folder, *statements):
    """Changes a database behind the program's back."""
    with closing(sqlite3.connect(DataFolder(folder).database)) as connection:
        for trigger in ("events_refuse_update", "events_refuse_delete"):
            connection.execute(f"DROP TRIGGER {trigger}")
        for statement in statements:
            connection.execute(*statement)
        connection.commit()


def in_backup(path, change):
    """Changes the files in a backup by `change(name -> bytes)` and packs it again."""
    with zipfile.ZipFile(path) as archive:
        files = {name: archive.read(name) for name in archive.namelist()}
    change(files)
    with zipfile.ZipFile(path, "w") as archive:
        for name, content in files.items():
            archive.writestr(name, content)


# --- verify


def test_what_is_intact_passes(said, data, backup):
    assert said("verify", data) == (0, f"Intact: {data}, a data folder.\n")
    assert said("verify", backup) == (0, f"Intact: {backup}, a backup.\n")


def test_verifying_changes_nothing(said, data):
    before = {path: path.read_bytes() for path in data.rglob("*") if path.is_file()}
    said("verify", data)
    assert {path: path.read_bytes() for path in data.rglob("*") if path.is_file()} == before


ALTERED = [
    pytest.param(
        [("UPDATE events SET body = replace(body, 'x1', 'x9') WHERE device = ? AND seq = 2", [OTHER])],
        OTHER, 2, "bytes do not match", id="a byte of an entry",
    ),
    pytest.param(
        [("UPDATE events SET body = 'no json', hash = ? WHERE device = ? AND seq = 2",
          [canon.sha256_hex("no json"), OTHER])],
        OTHER, 2, "no entry", id="an entry and its hash",
    ),
    pytest.param(
        [("UPDATE events SET kind = 'job_closed' WHERE device = ? AND seq = 3", [OTHER])],
        OTHER, 3, "filed under", id="the kind beside an entry",
    ),
    pytest.param([("DELETE FROM events WHERE device = ? AND seq = 2", [OTHER])],
                 OTHER, 2, "missing", id="an entry in the middle gone"),
    pytest.param([("DELETE FROM events WHERE device = ? AND seq = 1", [DEVICE])],
                 DEVICE, 1, "missing", id="the first entry gone"),
    pytest.param([("DELETE FROM events WHERE device = ? AND seq < 3", [OTHER])],
                 OTHER, 2, "missing", id="two entries gone"),
    pytest.param(
        [("DELETE FROM events WHERE device = ? AND seq = 2", [OTHER]),
         ("UPDATE events SET n = n - 1 WHERE n > 5",)],
        OTHER, 2, "missing", id="an entry gone and the rest moved up",
    ),
]  # fmt: skip


@pytest.mark.parametrize(("statements", "device", "seq", "what"), ALTERED)
def test_a_change_to_the_log_of_a_folder_is_named(said, data, statements, device, seq, what):
    tamper(data, *statements)

    status, text = said("verify", data)

    assert status == 1
    assert f"device {device}, entry {seq}: " in text
    assert what in text


@pytest.mark.parametrize(("statements", "device", "seq", "what"), ALTERED)
def test_a_change_to_the_log_in_a_backup_is_named(said, backup, tmp_path, statements, device, seq, what):
    def change(files):
        (tmp_path / "x").mkdir()
        (tmp_path / "x" / "swaptrail.db").write_bytes(files["swaptrail.db"])
        tamper(tmp_path / "x", *statements)
        files["swaptrail.db"] = (tmp_path / "x" / "swaptrail.db").read_bytes()

    in_backup(backup, change)

    status, text = said("verify", backup)

    assert status == 1
    assert f"device {device}, entry {seq}: " in text
    assert what in text


@pytest.mark.parametrize("device", [DEVICE, OTHER])
def test_the_last_entry_gone_is_found(said, data, backup, tmp_path, device):
    statement = ("DELETE FROM events WHERE device = ? AND seq = 4", [device])
    tamper(data, statement)
    status, text = said("verify", data)
    assert status == 1
    assert "an entry is missing" in text

    def change(files):
        files["swaptrail.db"] = DataFolder(data).database.read_bytes()

    in_backup(backup, change)
    status, text = said("verify", backup)
    assert status == 1
    assert f"device {device}, entry 4: it is missing" in text


def test_a_byte_flipped_in_the_file_of_a_backup_is_named(said, backup):
    raw = bytearray(backup.read_bytes())
    place = raw.index(b'"note":"x2"') + len(b'"note":"')
    raw[place] ^= 1
    backup.write_bytes(raw)

    status, text = said("verify", backup)

    assert status == 1
    assert f"device {OTHER}, entry 3: its bytes do not match" in text


def swap_photos(read, write):
    one, two = digest_of(PHOTO), digest_of(SECOND)
    first, second = read(one), read(two)
    write(one, second)
    write(two, first)


def test_photos_that_changed_places_or_are_gone_are_named(said, data, backup):
    photos = DataFolder(data).photos
    swap_photos(
        lambda digest: photo_store.path_of(photos, digest).read_bytes(),
        lambda digest, content: photo_store.path_of(photos, digest).write_bytes(content),
    )
    status, text = said("verify", data)
    assert status == 1
    assert f"device {DEVICE}, entry 2: the photo {digest_of(PHOTO)} is another one" in text

    photo_store.path_of(photos, digest_of(PHOTO)).unlink()
    status, text = said("verify", data)
    assert status == 1
    assert f"device {DEVICE}, entry 2: the photo {digest_of(PHOTO)} is missing" in text


def test_a_swapped_photo_in_a_backup_is_named(said, backup):
    def change(files):
        swap_photos(
            lambda digest: files[f"photos/{digest}.jpg"],
            lambda digest, content: files.update({f"photos/{digest}.jpg": content}),
        )

    in_backup(backup, change)
    status, text = said("verify", backup)
    assert status == 1
    assert f"device {DEVICE}, entry 2: the photo {digest_of(PHOTO)} is another one" in text


@pytest.mark.parametrize(
    ("change", "what"),
    [
        (lambda files: files.pop(f"photos/{digest_of(SECOND)}.jpg"), "entry 3: the photo"),
        (lambda files: files.pop("swaptrail.db"), "swaptrail.db is missing"),
        (lambda files: files.update({"keys/cookie.key": b"x"}), "keys/cookie.key was changed"),
        (lambda files: files.update({"../evil": b"x"}), "../evil was added"),
        (lambda files: files.update({"swaptrail.db": files["swaptrail.db"][:9000]}), "database"),
    ],
    ids=["photo", "database", "key", "more", "cut"],
)
def test_another_change_to_a_backup_is_found_and_it_is_not_restored(said, backup, tmp_path, change, what):
    in_backup(backup, change)

    status, text = said("verify", backup)
    assert status == 1
    assert what in text

    status, text = said("restore", backup, "--data", tmp_path / "new")
    assert status == 2
    assert "nothing was restored" in text
    assert not (tmp_path / "new").exists()


@pytest.mark.parametrize(
    ("change", "what"),
    [
        (lambda raw: raw + b"\n", "something was added at its end"),
        (lambda raw: raw + bytes(76), "something was added at its end"),
        (lambda raw: b"#!/bin/sh\n" + raw, "the head of"),
        (lambda raw: raw.replace(b'"made_at"', b'"Made_at"'), "manifest.json was changed"),
        (lambda raw: raw.replace(b"photos/", b"Photos/", 1), "photo"),
        (lambda raw: raw[:10] + bytes([raw[10] ^ 1]) + raw[11:], "the head of photos/"),
    ],
    ids=["line end", "room of a large end", "in front", "list", "name", "time"],
)
def test_a_byte_outside_the_files_of_a_backup_is_found(said, backup, tmp_path, change, what):
    backup.write_bytes(change(backup.read_bytes()))

    status, text = said("verify", backup)

    assert status == 1
    assert what in text
    assert said("restore", backup, "--data", tmp_path / "new")[0] == 2
    assert not (tmp_path / "new").exists()


def test_a_list_in_a_backup_that_makes_no_sense_is_an_altered_one(said, backup):
    def change(files):
        files["manifest.json"] = files["manifest.json"].replace(b'"heads"', b'"tails"')

    in_backup(backup, change)

    status, text = said("verify", backup)

    assert (status, "manifest.json was changed" in text) == (1, True)


def test_what_is_none_of_ours_is_refused(said, tmp_path):
    (tmp_path / "text").write_text("hello")
    (tmp_path / "folder").mkdir()
    with zipfile.ZipFile(tmp_path / "other.zip", "w") as archive:
        archive.writestr("manifest.json", json.dumps({"app": "something else"}))
    for name in ("text", "folder", "other.zip", "not-there"):
        status, text = said("verify", tmp_path / name)
        assert status == 2, name
        assert text.startswith("swaptrail: ")
        assert text.count("\n") == 1


def test_a_backup_that_was_cut_off_is_no_backup(said, backup):
    backup.write_bytes(backup.read_bytes()[:-100])
    status, text = said("verify", backup)
    assert (status, "cut short" in text) == (2, True)


# --- backup and restore


def test_a_restored_folder_holds_the_same_under_a_new_identity(said, data, backup, tmp_path):
    status, text = said("restore", backup, "--data", tmp_path / "new")

    assert status == 0, text
    assert said("verify", tmp_path / "new")[0] == 0
    dumps = []
    for root in (data, tmp_path / "new"):
        folder = DataFolder(root)
        folder.prepare()
        with closing(folder.open()) as db:
            settings = dict(db.conn.execute("SELECT * FROM settings").fetchall())
            dumps.append((events.after(db, 0, 99, 10**9), settings.pop("installation"), settings))
    assert dumps[0][0] == dumps[1][0]
    assert dumps[0][1] != dumps[1][1]
    assert dumps[0][2] == dumps[1][2]
    assert DataFolder(data).secret_key() == DataFolder(tmp_path / "new").secret_key()
    assert DataFolder(tmp_path / "new").keys.joinpath("cookie.key").stat().st_mode & 0o777 == 0o600


def test_a_restored_folder_never_issues_a_label_that_was_printed(said, data, tmp_path, monkeypatch):
    with closing(DataFolder(data).open()) as db:
        printed = store.issue(db, 300, "https://yard.test", {}, 1).codes
    assert said("backup", tmp_path / "later.zip", "--data", data)[0] == 0
    assert said("restore", tmp_path / "later.zip", "--data", tmp_path / "new")[0] == 0
    drawn = bytes(number for code in printed for number in numbers_of(code))
    real = secrets.token_bytes
    monkeypatch.setattr("secrets.token_bytes", lambda count: drawn + real(count))

    with closing(DataFolder(tmp_path / "new").open()) as db:
        issued = store.issue(db, 20, "https://yard.test", {}, 2).codes

    assert not set(issued) & set(printed)


def test_labels_printed_after_the_backup_are_not_issued_by_the_restored_folder_either(
    said, data, backup, tmp_path
):
    """Nothing on record tells of them, so each folder takes its codes from a share of its own."""
    assert said("restore", backup, "--data", tmp_path / "new")[0] == 0
    printed = []
    for root in (data, tmp_path / "new"):
        with closing(DataFolder(root).open()) as db:
            printed.append(set(store.issue(db, 2000, "https://yard.test", {}, 1).codes))

    assert not printed[0] & printed[1]


def numbers_of(code):
    """Return the bytes that become this code."""
    return [labels.PRINT_FIRST.index(code[0]), *map(labels.ALPHABET.index, code[1:4])]


def test_nothing_is_overwritten(said, data, backup, tmp_path):
    status, text = said("restore", backup, "--data", data)
    assert (status, "not empty" in text) == (2, True)
    status, text = said("backup", backup, "--data", data)
    assert (status, "nothing is overwritten" in text) == (2, True)
    assert said("verify", data)[0] == 0


@pytest.mark.parametrize(
    "arguments",
    [
        pytest.param(["backup", "x.zip", "--data", "nowhere"], id="backup of nothing"),
        pytest.param(["backup", "nowhere/x.zip", "--data", "data"], id="backup to nowhere"),
        pytest.param(["restore", "nowhere.zip", "--data", "new"], id="restore of nothing"),
        pytest.param(["restore", "data", "--data", "new"], id="restore of a folder"),
        pytest.param(["rebuild", "--data", "nowhere"], id="rebuild of nothing"),
    ],
)
def test_a_command_that_cannot_be_carried_out_says_why_in_one_line(said, data, monkeypatch, arguments):
    monkeypatch.chdir(data.parent)
    status, text = said(*arguments)
    assert status == 2
    assert text.startswith("swaptrail: ")
    assert text.count("\n") == 1
    assert "a record" not in text, "that is nothing that any of these takes"
    assert {path.name for path in data.parent.iterdir()} == {"data"}


def test_a_damaged_photo_is_left_out_of_a_backup_and_said(said, data, tmp_path):
    photo_store.path_of(DataFolder(data).photos, digest_of(PHOTO)).write_bytes(b"broken")
    status, text = said("backup", tmp_path / "b.zip", "--data", data)
    assert status == 1
    assert digest_of(PHOTO) in text
    assert said("verify", tmp_path / "b.zip")[0] == 0, "the rest of it can be restored"


def test_a_backup_while_entries_come_in_is_whole(said, data, tmp_path):
    ended = threading.Event()
    device = "d00000000000000cc"

    def write():
        entries = []
        with closing(DataFolder(data).open()) as db:
            while not ended.is_set():
                entries.append(entry_after(entries, device, "cleaned", {"position": "x", "note": ""}, JOB))
                events.receive(db, entries[-1:], None, NOW)
                time.sleep(0.001)

    writer = threading.Thread(target=write)
    writer.start()
    try:
        for number in range(4):
            assert said("backup", tmp_path / f"{number}.zip", "--data", data)[0] == 0
    finally:
        ended.set()
        writer.join()
    for number in range(4):
        assert said("verify", tmp_path / f"{number}.zip")[0] == 0
        assert said("restore", tmp_path / f"{number}.zip", "--data", tmp_path / f"d{number}")[0] == 0
    assert [path.name for path in tmp_path.glob(".swaptrail-*")] == []


# --- rebuild


def test_a_rebuild_of_what_is_right_changes_nothing(said, data):
    status, text = said("rebuild", "--data", data)
    assert status == 0
    assert "as it should be" in text


@pytest.mark.parametrize(
    ("statement", "line"),
    [
        ("UPDATE folded SET body = '{}' WHERE kind = 'vehicle'", "vehicle v00000000000a was another"),
        ("DELETE FROM folded WHERE kind = 'job'", f"job {JOB} was missing"),
        ("INSERT INTO folded VALUES ('unit', 'u0', 1, '{}')", "unit u0 was too much"),
        ("DELETE FROM withdrawn", f"correction of {OTHER} 2 was missing"),
        ("UPDATE job_list SET closed = 1", f"job {JOB} in the list was another"),
        ("DELETE FROM event_units", "unit v00000000000a.rear-left in entry 1 was missing"),
        ("DELETE FROM event_photos", f"photo {digest_of(PHOTO)} in entry 2 was missing"),
    ],
)
def test_a_rebuild_says_what_differed_and_puts_it_right(said, data, statement, line):
    with closing(sqlite3.connect(DataFolder(data).database)) as connection:
        connection.execute(statement)
        connection.commit()

    status, text = said("rebuild", "--data", data)

    assert status == 1
    assert line in text.splitlines()
    assert said("rebuild", "--data", data)[0] == 0


# --- photos that nothing names


def days(count):
    return count * 24 * 60 * 60 * 1000


def test_a_photo_that_nothing_names_goes_after_its_time_and_a_named_one_never(data):
    folder = DataFolder(data)
    unnamed, apart, brought = (jpeg(colour=colour) for colour in ((1, 2, 3), (4, 5, 6), (7, 8, 9)))
    with closing(folder.open()) as db:
        for picture in (unnamed, apart, brought):
            photo_store.keep(db, folder.photos, digest_of(picture), picture, NOW)
        forked = entry_after([], DEVICE, "photo_taken", photo_data(apart), JOB)
        assert [each["code"] for each in events.receive(db, [forked], None, NOW).refused] == ["forked"]

        lone = entry_after([], "d00000000000000ee", "photo_taken", photo_data(brought), JOB)
        with writing(db):
            events.take_in(db, [{**lone, "relayed": True}], None, NOW, only_prove=True)
        assert db.conn.execute("SELECT count(*) FROM unproven").fetchone() == (1,)

        assert sweep(db, folder.photos, NOW + days(KEPT_DAYS)) == []
        assert sweep(db, folder.photos, NOW + days(KEPT_DAYS) + 1) == [digest_of(unnamed)]

        assert photo_store.whole(folder.photos, digest_of(unnamed)) is None
        named = (PHOTO, SECOND, apart, brought)
        assert all(photo_store.whole(folder.photos, digest_of(each)) for each in named)
    assert main(["verify", str(data)]) == 0


def test_what_a_crash_left_in_the_photo_folder_goes_after_its_time(data):
    folder = DataFolder(data)
    left = photo_store.path_of(folder.photos, digest_of(b"left"))
    left.parent.mkdir(exist_ok=True)
    left.write_bytes(b"left")
    part = left.with_name("x.jpg.0000.part")
    part.write_bytes(b"cut off")
    now = round(time.time() * 1000)
    with closing(folder.open()) as db:
        assert sweep_files(db, folder.photos, now) == 0
        assert sweep_files(db, folder.photos, now + days(2)) == 1
        assert not part.exists()
        assert sweep_files(db, folder.photos, now + days(KEPT_DAYS + 1)) == 1
        assert not left.exists()
        assert all(photo_store.whole(folder.photos, digest_of(each)) for each in (PHOTO, SECOND))


def test_a_photo_taken_away_comes_back_when_it_is_sent_again(data):
    folder = DataFolder(data)
    shutil.rmtree(folder.photos)
    folder.photos.mkdir()
    with closing(folder.open()) as db:
        photo_store.keep(db, folder.photos, digest_of(PHOTO), PHOTO, NOW)
    assert photo_store.whole(folder.photos, digest_of(PHOTO)) == PHOTO
