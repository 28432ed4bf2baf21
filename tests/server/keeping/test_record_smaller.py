"""Photos for which a record has no room go into it as smaller versions, and everybody says so."""

import io
import json
from contextlib import closing
from random import Random

import pytest
from PIL import Image

from server.commands.cli import main
from server.core.log import canon
from server.core.record.file import LATEST
from server.core.record.file import SMALLER_SIDE
from server.core.record.file import VERSION
from server.keeping.record import container
from server.keeping.record import seal
from server.keeping.record.check import Altered
from server.keeping.record.check import check
from server.keeping.record.make import make
from server.phones.signing import signer
from tests.server.keeping.record_yard import BAD_CODE
from tests.server.keeping.record_yard import PHOTOS
from tests.server.keeping.record_yard import Yard
from tests.server.keeping.record_yard import digest
from tests.server.keeping.record_yard import filled
from tests.server.phone import NOW
from tests.server.phone import jpeg

LARGE = ["first", "second", "third"]


def noise(seed: int, width: int = 1600, height: int = 1200) -> bytes:
    """Returns a JPEG that cannot be packed well, as a picture of gravel."""
    file = io.BytesIO()
    pixels = Random(seed).randbytes(width * height * 3)
    Image.frombytes("RGB", (width, height), pixels).save(file, "JPEG", quality=85)
    return file.getvalue()


PICTURES = {name: noise(seed) for seed, name in enumerate(LARGE)}
SIZE = max(map(len, PICTURES.values()))


@pytest.fixture
def fill(monkeypatch):
    """Gives what fills a data folder with the yard and three large pictures more."""

    def run(root) -> Yard:
        for name, data in PICTURES.items():
            monkeypatch.setitem(PHOTOS, name, data)
        yard = filled(root)
        for name in LARGE:
            yard.photo(name)
        return yard.stored()

    return run


@pytest.fixture
def room(monkeypatch):
    """Gives what sets how many of the large pictures a record has room for as they are."""

    def run(pictures: float) -> int:
        most = int(SIZE * pictures) + 128 * 1024
        monkeypatch.setattr("server.core.record.file.MOST_BYTES", most)
        return most

    return run


def made_of(yard, **how):
    with closing(yard.folder.open()) as db:
        return make(db, yard.folder.photos, BAD_CODE, signer(yard.folder), NOW, **how)


def members_of(data):
    return {name: bytes(content) for name, content in container.unpack(data)}


def packed(members):
    return b"".join(bytes(piece) for _, piece in container.pieces(members.items()))


def sealed_anew(yard, members):
    """Returns the file with a seal that fits what is in it now."""
    others = {name: members[name] for name in members if name not in ("record.json", "seal.json")}
    text = seal.sealed(seal.digests(json.loads(members["record.json"]), others), signer(yard.folder))
    return packed({**members, "seal.json": text.encode()})


def test_pictures_without_room_are_counted_and_left_out_where_nobody_wants_them_smaller(fill, room, tmp_path):
    yard = fill(tmp_path / "data")
    room(1.5)
    made = made_of(yard)
    assert (made.photos, made.smaller, made.absent, made.roomless) == (3, 0, 2, 2)
    assert "smaller" not in json.loads(members_of(made.data)["hashes.json"])


def test_the_last_ones_go_in_smaller_until_all_have_room(fill, room, tmp_path):
    yard = fill(tmp_path / "data")
    most = room(2.6)
    made = made_of(yard, make_smaller=True)
    assert len(made.data) <= most
    assert (made.photos, made.smaller, made.absent, made.roomless) == (5, 1, 0, 0)
    found = check(made.data)
    assert found.smaller == found.record["missing"] == [digest("third")]
    for name in ("first", "second", "third"):
        offset, length = found.photos[digest(name)]
        data = made.data[offset : offset + length]
        if name != "third":
            assert data == PICTURES[name]
            continue
        with Image.open(io.BytesIO(data)) as image:
            assert image.size == (SMALLER_SIDE, SMALLER_SIDE * 3 // 4)


def test_programs_from_before_are_told_that_it_is_of_a_later_version(fill, room, tmp_path):
    """They would not notice a change in one: they check the photos alone that an entry names."""
    yard = fill(tmp_path / "data")
    assert check(made_of(yard, make_smaller=True).data).record["v"] == VERSION
    room(1.9)
    assert check(made_of(yard).data).record["v"] == VERSION
    assert check(made_of(yard, make_smaller=True).data).record["v"] == LATEST > VERSION


def test_what_finds_no_room_even_smaller_is_left_out_and_counted(fill, room, tmp_path):
    yard = fill(tmp_path / "data")
    most = room(0.5)
    made = made_of(yard, make_smaller=True)
    assert len(made.data) <= most
    assert made.photos + made.absent == 5
    assert made.smaller >= 1
    assert made.roomless == made.absent >= 1
    found = check(made.data)
    assert len(found.smaller) == made.smaller
    assert len(found.record["missing"]) == made.smaller + made.absent


def test_a_picture_that_is_no_smaller_when_drawn_again_stays_as_it_is(fill, room, tmp_path, monkeypatch):
    yard = fill(tmp_path / "data")
    room(1.5)
    monkeypatch.setattr("server.keeping.record.pictures.small_version", lambda data, *_: data + b"more")
    made = made_of(yard, make_smaller=True)
    assert (made.photos, made.smaller, made.roomless) == (3, 0, 2)


@pytest.fixture
def smaller(fill, room, tmp_path):
    """Gives the yard and the members of a record in which two pictures are smaller."""
    yard = fill(tmp_path / "data")
    room(1.9)
    made = made_of(yard, make_smaller=True)
    assert made.smaller == 2
    return yard, members_of(made.data)


def version_of(members, name):
    return f"photos/{json.loads(members['hashes.json'])['smaller'][digest(name)]}.jpg"


def test_a_changed_smaller_version_is_found_and_its_entry_named(smaller):
    _, members = smaller
    name = version_of(members, "second")
    with pytest.raises(Altered, match=rf"entry \d+: the photo {name[7:-4]} is another one"):
        check(packed({**members, name: jpeg()}))
    with pytest.raises(Altered, match=rf"entry \d+: the photo {name[7:-4]} is missing"):
        check(packed({each: members[each] for each in members if each != name}))
    told = json.loads(members["hashes.json"])
    told["smaller"][digest("second")] = told["smaller"][digest("third")]
    with pytest.raises(Altered, match=r"hashes\.json was changed"):
        check(packed({**members, "hashes.json": canon.dumps(told).encode()}))


def test_a_member_that_no_entry_names_is_checked_against_the_seal(smaller):
    yard, members = smaller
    unnamed = f"photos/{'0' * 64}.jpg"
    with_one = members_of(sealed_anew(yard, {**members, unnamed: jpeg()}))
    assert len(check(packed(with_one)).photos) == 5
    with pytest.raises(Altered, match=rf"{unnamed} was changed"):
        check(packed({**with_one, unnamed: jpeg(colour=(1, 2, 3))}))


@pytest.mark.parametrize("value", [None, [], {"x": "0" * 64}, {"0" * 64: "../x"}, {"0" * 64: 1}])
def test_a_well_sealed_list_of_smaller_versions_of_another_form_is_refused(smaller, value):
    yard, members = smaller
    told = {**json.loads(members["hashes.json"]), "smaller": value}
    with pytest.raises(Altered, match="not written as a list of hashes is"):
        check(sealed_anew(yard, {**members, "hashes.json": canon.dumps(told).encode()}))


def test_a_version_that_is_not_in_the_file_is_none(smaller):
    yard, members = smaller
    told = json.loads(members["hashes.json"])
    told["smaller"][digest("second")] = "0" * 64
    found = check(sealed_anew(yard, {**members, "hashes.json": canon.dumps(told).encode()}))
    assert found.smaller == [digest("third")]
    assert digest("second") not in found.photos


def test_the_command_makes_them_smaller_and_says_so_and_verify_counts_them(fill, room, tmp_path, capsys):
    yard = fill(tmp_path / "data")
    room(1.9)
    out = tmp_path / "r.zip"
    assert main(["record", BAD_CODE, "--out", str(out), "--data", str(yard.folder.root)]) == 0
    said = capsys.readouterr().out
    assert "5 photos." in said
    assert "In it as a smaller version, for want of room: 2 photos. The originals stay here." in said
    assert "not here or too large" not in said
    assert main(["verify", str(out)]) == 0
    assert capsys.readouterr().out.splitlines()[-1] == (
        "2 pictures in it are smaller versions. That they show the same as the original, only the seal says."
    )


@pytest.fixture
def served(app, folder, fill):
    """The yard's log on the server of `phone`."""
    return fill(folder.root)


def test_a_phone_is_told_how_many_have_no_room_and_asks_for_smaller_ones(served, room, phone):
    room(1.9)
    told = ("Swaptrail-Smaller", "Swaptrail-Roomless")
    first = phone.get(f"/api/records/{BAD_CODE}")
    assert [first.headers[name] for name in told] == ["0", "2"]
    second = phone.get(f"/api/records/{BAD_CODE}?smaller=1")
    assert [second.headers[name] for name in told] == ["2", "0"]
    answer = phone.write("POST", "/api/records/check", data=second.data).get_json()
    assert answer["smaller"] == [digest("second"), digest("third")]
    for name in LARGE:
        offset, length = answer["photos"][digest(name)]
        assert second.data[offset : offset + length].startswith(b"\xff\xd8\xff")
