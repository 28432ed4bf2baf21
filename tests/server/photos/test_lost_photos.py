"""A photo that rots on the server's disk is found, set aside, listed, and asked for from every phone."""

import errno
import hashlib
from contextlib import closing

import pytest

from server.core.words.words import DAY_MS
from server.log.sync import MOST_PHOTOS_WANTED
from server.photos import lost
from server.photos import rounds
from server.photos import store
from server.serving.serve import held_open
from server.storage import DataFolder
from server.storage import writing
from tests.server.phone import JOB
from tests.server.phone import NOW
from tests.server.phone import jpeg
from tests.waiting import wait_for

PICTURE, OTHER = jpeg(), jpeg(colour=(10, 20, 30))


def digest_of(data):
    return hashlib.sha256(data).hexdigest()


def url(data):
    return f"/api/photos/{digest_of(data)}"


def pictures_of(count):
    """Returns so many small pictures, each another one."""
    return [jpeg(8, 8 + number) for number in range(count)]


def taken(phone, *pictures):
    """Lets a phone record pictures and send all of it."""
    for data in pictures:
        fields = {"mime": "image/jpeg", "bytes": len(data), "width": 64, "height": 48, "shows": "work"}
        fields |= {"sha256": digest_of(data), "position": "rear-left", "unit": ""}
        phone.record("photo_taken", fields)
    phone.synced()
    for data in pictures:
        assert phone.put(url(data), data).status_code == 200


def flipped(path):
    data = bytearray(path.read_bytes())
    data[len(data) // 2] ^= 1
    path.write_bytes(data)


def folder_instead(path):
    path.unlink()
    path.mkdir()


DAMAGES = {
    "byte flipped": (flipped, lost.CHANGED),
    "cut off": (lambda path: path.write_bytes(b""), lost.CHANGED),
    "gone": (lambda path: path.unlink(), lost.MISSING),
    "folder instead": (folder_instead, lost.CHANGED),
}


@pytest.fixture(params=DAMAGES)
def damage(request):
    """Does damage to the photo of PICTURE; returns what it is called."""
    how, what = DAMAGES[request.param]

    def do(folder, data=PICTURE):
        how(store.path_of(folder.photos, digest_of(data)))
        return what

    return do


def listed(db):
    return [(photo.sha256, photo.what) for photo in lost.listed(db.conn, 9)]


def test_a_damaged_photo_is_found_while_the_folder_is_served_and_asked_for_from_every_phone(
    phone, new_phone, folder, db, damage, said, monkeypatch
):
    taken(phone, PICTURE, OTHER)
    other = new_phone("d00000000000000bb", "Kim")
    what = damage(folder)
    with writing(db):
        rounds.all_anew(db.conn)
    monkeypatch.setattr(rounds, "PAUSE_SECONDS", 0.001)

    with held_open(folder):
        wait_for(lambda: lost.count(db))

    assert listed(db) == [(digest_of(PICTURE), what)]
    for each in (phone, other):
        answer = each.synced([])
        assert answer["photos_wanted"] == [digest_of(PICTURE)]
        (photo,) = answer["photos_lost"]
        assert (photo["job"], photo["position"]) == (JOB, "rear-left")
    assert phone.head(url(PICTURE)).status_code == 404

    assert other.put(url(PICTURE), PICTURE).status_code == 200

    assert phone.get(url(PICTURE)).data == PICTURE
    answer = phone.synced([])
    assert (answer["photos_wanted"], answer["photos_lost"]) == ([], [])
    assert said("verify", folder.root)[0] == 0


def test_rebuild_and_verify_agree_until_the_photo_is_whole_again(phone, folder, damage, said):
    taken(phone, PICTURE, OTHER)
    damage(folder)

    for command in (["verify"], ["rebuild", "--data"], ["verify"], ["rebuild", "--data"], ["verify"]):
        status, text = said(*command, folder.root)
        assert status == 1, command
        assert digest_of(PICTURE) in text
        assert digest_of(OTHER) not in text
        assert "1 photo is missing or damaged. Every phone that sends is asked for them:" in text
        assert "everything was as it should be" not in text

    phone.put(url(PICTURE), PICTURE)
    for command in (["rebuild", "--data"], ["verify"]):
        assert said(*command, folder.root)[0] == 0


def test_what_was_damaged_is_set_aside_and_never_taken_for_the_photo(phone, folder, db):
    taken(phone, PICTURE)
    path = store.path_of(folder.photos, digest_of(PICTURE))
    flipped(path)
    damaged = path.read_bytes()

    assert lost.look(db, folder.photos, digest_of(PICTURE), NOW) is False

    assert not path.exists()
    (aside,) = (folder.photos / lost.ASIDE).iterdir()
    assert (aside.name, aside.read_bytes()) == (f"{digest_of(PICTURE)}-{NOW}.jpg", damaged)


def test_whoever_looks_at_a_damaged_photo_has_it_noted(phone, folder, db, damage):
    for number, path in enumerate((url(PICTURE), f"{url(PICTURE)}/small")):
        taken(phone, PICTURE)
        what = damage(folder)
        assert phone.get(path).status_code == (404, 204)[number]
        assert listed(db) == [(digest_of(PICTURE), what)]


def test_asking_for_a_photo_that_never_came_notes_nothing(phone, db):
    assert phone.get(url(PICTURE)).status_code == 404
    assert listed(db) == []


def test_a_photo_that_turns_up_again_is_taken_back(phone, folder, db, monkeypatch):
    """The disk with the photos was not there for a while."""
    taken(phone, PICTURE)
    folder.photos.rename(folder.root / "unplugged")
    assert lost.look(db, folder.photos, digest_of(PICTURE), NOW) is False
    assert listed(db) == [(digest_of(PICTURE), lost.MISSING)]
    (folder.photos / lost.ASIDE).rmdir()
    folder.photos.rmdir()
    (folder.root / "unplugged").rename(folder.photos)

    lost.adopt(db, folder.photos, NOW)

    assert listed(db) == []
    assert phone.synced([])["photos_wanted"] == []


def test_a_photo_whose_place_holds_something_else_is_not_taken_back(phone, folder, db):
    taken(phone, PICTURE)
    path = store.path_of(folder.photos, digest_of(PICTURE))
    path.unlink()
    lost.look(db, folder.photos, digest_of(PICTURE), NOW)
    path.write_bytes(OTHER)

    lost.adopt(db, folder.photos, NOW)

    assert listed(db) == [(digest_of(PICTURE), lost.MISSING)]


def test_a_photo_that_the_disk_cannot_read_is_lost_and_one_that_may_not_be_read_is_not(
    phone, folder, db, monkeypatch
):
    taken(phone, PICTURE)
    digest = digest_of(PICTURE)

    def fail(number):
        def whole(*_):
            raise OSError(number, "as the disk says")

        monkeypatch.setattr(lost, "whole", whole)

    fail(errno.EACCES)
    with pytest.raises(PermissionError):
        lost.look(db, folder.photos, digest, NOW)
    assert listed(db) == []
    fail(errno.EIO)
    assert lost.look(db, folder.photos, digest, NOW) is False
    assert listed(db) == [(digest, lost.CHANGED)]


def test_a_damaged_photo_that_no_entry_names_is_forgotten_and_taken_when_it_comes(phone, folder, db, said):
    phone.put(url(PICTURE), PICTURE)
    flipped(store.path_of(folder.photos, digest_of(PICTURE)))

    assert said("rebuild", "--data", folder.root)[0] == 0
    assert said("verify", folder.root)[0] == 0
    taken(phone, PICTURE)
    assert phone.get(url(PICTURE)).data == PICTURE


# --- the round


def test_a_round_goes_on_where_it_was_and_begins_anew_after_a_week(phone, folder, db):
    pictures = pictures_of(5)
    taken(phone, *pictures)
    digests = sorted(map(digest_of, pictures))
    with writing(db):
        rounds.all_anew(db.conn)
    assert rounds.due(db, NOW, 9) == digests

    rounds.note_looked_at(db, digests[:2], NOW)
    with closing(DataFolder(folder.root).open()) as later:
        assert rounds.due(later, NOW + 5, 9) == digests[2:]
        rounds.note_looked_at(later, digests[2:], NOW + 5)
        assert rounds.due(later, NOW + 5 + rounds.ROUND_DAYS * DAY_MS, 9) == digests[:2]
        assert rounds.due(later, NOW + 6 + rounds.ROUND_DAYS * DAY_MS, 9) == digests
        assert rounds.due(later, NOW - DAY_MS, 9) == digests, "the clock was put back"


def test_a_photo_that_may_not_be_read_holds_up_none_of_the_others(phone, folder, db, monkeypatch):
    pictures = pictures_of(3)
    taken(phone, *pictures)
    digests = sorted(map(digest_of, pictures))
    store.path_of(folder.photos, digests[1]).unlink()
    real = lost.look

    def look(db, photos, digest, now):
        if digest == digests[0]:
            raise PermissionError(errno.EACCES, "not yours")
        return real(db, photos, digest, now)

    monkeypatch.setattr(lost, "look", look)
    monkeypatch.setattr(rounds, "PAUSE_SECONDS", 0.001)
    with writing(db):
        rounds.all_anew(db.conn)

    with held_open(folder):
        wait_for(lambda: db.conn.execute("SELECT min(checked_at) FROM photos").fetchone()[0])

    assert listed(db) == [(digests[1], lost.MISSING)]


def test_a_photo_just_stored_is_not_looked_at_again_at_once(phone, db):
    taken(phone, PICTURE)
    (stored_at,) = db.conn.execute("SELECT stored_at FROM photos").fetchone()
    assert rounds.due(db, stored_at + DAY_MS, 9) == []


def test_rejoin_has_all_photos_looked_at(phone, folder, db, said):
    taken(phone, PICTURE)
    (stored_at,) = db.conn.execute("SELECT stored_at FROM photos").fetchone()

    assert said("rejoin", "--data", folder.root)[0] == 0

    assert rounds.due(db, stored_at + 1, 9) == [digest_of(PICTURE)]


# --- what phones are asked for


def test_the_phone_that_took_it_is_asked_first_and_the_others_for_any_of_them(phone, new_phone, folder, db):
    pictures = pictures_of(MOST_PHOTOS_WANTED + 30)
    taken(phone, *pictures)
    other = new_phone("d00000000000000bb", "Kim")
    digests = [digest_of(data) for data in pictures]
    for digest in digests:
        store.path_of(folder.photos, digest).unlink()
        lost.look(db, folder.photos, digest, NOW)

    assert phone.synced([])["photos_wanted"] == digests[:MOST_PHOTOS_WANTED]
    asked = set()
    for _ in range(40):
        wanted = other.synced([])["photos_wanted"]
        assert len(set(wanted)) == len(wanted) == MOST_PHOTOS_WANTED
        asked.update(wanted)
    assert asked == set(digests)


def test_a_start_says_what_is_lost(phone, folder, db, capsys):
    taken(phone, PICTURE)
    store.path_of(folder.photos, digest_of(PICTURE)).unlink()
    lost.look(db, folder.photos, digest_of(PICTURE), NOW)
    capsys.readouterr()
    with held_open(folder):
        assert "1 photo is missing or damaged here." in capsys.readouterr().out


# --- a backup of it


def test_a_backup_without_a_damaged_photo_can_be_restored_and_asks_for_it(phone, folder, tmp_path, said):
    taken(phone, PICTURE, OTHER)
    flipped(store.path_of(folder.photos, digest_of(PICTURE)))

    status, text = said("backup", tmp_path / "b.zip", "--data", folder.root)
    assert status == 1
    assert digest_of(PICTURE) in text
    assert said("verify", tmp_path / "b.zip")[0] == 0
    assert said("restore", tmp_path / "b.zip", "--data", tmp_path / "new")[0] == 0

    status, text = said("verify", tmp_path / "new")
    assert (status, digest_of(PICTURE) in text) == (1, True)
    with closing(DataFolder(tmp_path / "new").open()) as db:
        store.keep(db, tmp_path / "new" / "photos", digest_of(PICTURE), PICTURE, NOW)
    assert said("verify", tmp_path / "new")[0] == 0
