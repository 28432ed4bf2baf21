"""Photos: stored by content, checked on the way in and out, refused when they tell too much."""

import hashlib
import io
import random

import pytest
from PIL import Image
from PIL import ImageCms
from PIL import ImageFilter

from server.photos import jpeg as jpeg_module
from server.photos import store as photo_store
from tests.server.phone import JOB
from tests.server.phone import assert_refused
from tests.server.phone import jpeg


def url(data):
    return f"/api/photos/{hashlib.sha256(data).hexdigest()}"


def with_segment(data, marker, body):
    """Returns a JPEG with one more segment behind its first marker."""
    length = (len(body) + 2).to_bytes(2)
    return data[:2] + b"\xff" + bytes([marker]) + length + body + data[2:]


def photo_taken(data):
    digest = hashlib.sha256(data).hexdigest()
    size = {"bytes": len(data), "width": 64, "height": 48, "mime": "image/jpeg"}
    return {"sha256": digest, "shows": "work", "position": "", "unit": "", **size}


def test_a_photo_comes_back_byte_for_byte(phone):
    data = jpeg()

    answer = phone.put(url(data), data)

    assert answer.get_json() == {"sha256": url(data)[-64:], "stored": True}
    got = phone.get(url(data))
    assert got.data == data
    assert got.mimetype == "image/jpeg"


def test_head_tells_whether_the_server_has_it(phone):
    data = jpeg()

    before = phone.head(url(data)).status_code
    phone.put(url(data), data)

    assert before == 404
    assert phone.head(url(data)).status_code == 200


def test_a_photo_sent_twice_is_stored_once(phone, db, folder):
    data = jpeg()

    answers = [phone.put(url(data), data).status_code for _ in range(2)]

    assert answers == [200, 200]
    assert [row["bytes"] for row in db.table("photos").rows] == [len(data)]
    assert [file.name for file in folder.photos.rglob("*") if file.is_file()] == [f"{url(data)[-64:]}.jpg"]


def test_a_photo_that_rotted_on_disk_is_not_confirmed_and_is_taken_again(phone, folder):
    data = jpeg()
    phone.put(url(data), data)
    path = photo_store.path_of(folder.photos, url(data)[-64:])
    path.write_bytes(data[:-1] + b"\x00")

    assert phone.head(url(data)).status_code == 404
    assert phone.put(url(data), data).status_code == 200
    assert path.read_bytes() == data


def test_a_folder_in_place_of_a_photo_is_no_photo(phone, folder):
    data = jpeg()
    photo_store.path_of(folder.photos, url(data)[-64:]).mkdir(parents=True)

    assert phone.get(url(data)).status_code == 404
    assert_refused(phone.put(url(data), data), 503, "storage")


def test_a_segment_that_a_decoder_needs_has_no_room_for_more(phone):
    data = jpeg()
    profile = b"\0\0\x40\0" + b"\0" * 32 + b"acsp" + b"s" * (0x4000 - 40)  # 16 KiB, as it says itself
    for marker, body in [
        (0xE0, b"JFIF\0\1\2\0\0\1\0\1\x40\x40" + b"s" * 3 * 64 * 64),
        (0xE0, b"JFIF\0\1\2\0\0\1\0\1\0\0" + b"secret"),
        (0xE0, b"JFXX\0\x10secret"),
        (0xEE, b"Adobe\0\x64\0\0\0\0\1" + b"secret"),
        (0xE2, b"ICC_PROFILE\0\1\1" + profile),
        (0xE2, b"ICC_PROFILE\0\1\2secret"),
    ]:
        loaded = with_segment(data, marker, body)
        error = assert_refused(phone.put(url(loaded), loaded), 422, "photo")
        assert "application segment" in error["found"]


def test_what_browsers_write_beside_the_picture_is_taken(phone):
    profile = ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes()
    plain = jpeg(icc_profile=profile)

    assert phone.put(url(plain), plain).status_code == 200


def test_a_crash_while_writing_leaves_no_half_photo(phone, folder, monkeypatch):
    data = jpeg()

    def fail(*arguments):
        raise OSError("no space left")

    monkeypatch.setattr("os.replace", fail)
    assert_refused(phone.put(url(data), data), 500, "server")

    assert [file for file in folder.photos.rglob("*") if file.is_file()] == []
    assert phone.head(url(data)).status_code == 404


def test_bytes_that_do_not_match_the_hash_are_refused(phone):
    data = jpeg()

    error = assert_refused(phone.put(url(data), data[:-30]), 422, "photo")

    assert "do not match its hash" in error["message"]


@pytest.mark.parametrize(
    ("data", "message"),
    [
        pytest.param(b"", "no JPEG", id="nothing"),
        pytest.param(b"GIF89a" + b"\0" * 50, "no JPEG", id="a gif"),
        pytest.param(b"\xff\xd8\xff", "ends too early", id="only a beginning"),
        pytest.param(jpeg()[:-30], "ends too early", id="cut off"),
        pytest.param(jpeg()[:2] + b"\x00" + jpeg()[2:], "no JPEG", id="a stray byte"),
        pytest.param(b"\xff\xd8\xff\xd9", "holds no picture", id="no picture"),
        pytest.param(b"\x00\x00\x00\x18ftypheic" + b"\0" * 60, "no JPEG", id="heic"),
    ],
)
def test_a_broken_picture_is_refused(phone, data, message):
    error = assert_refused(phone.put(url(data), data), 422, "photo")

    assert message in error["message"]


def test_a_picture_that_cannot_be_decoded_is_refused(phone):
    data = bytearray(jpeg())
    table = data.index(b"\xff\xc4") + 5
    data[table : table + 2] = bytes([sum(data[table : table + 16]), 0])  # more codes of a bit than there are
    data[table + 2 : table + 16] = b"\0" * 14

    error = assert_refused(phone.put(url(bytes(data)), bytes(data)), 422, "photo")

    assert "damaged" in error["message"]


@pytest.mark.parametrize(
    ("marker", "body", "named"),
    [
        pytest.param(0xE1, b"Exif\0\0MM\0*GPS", "EXIF", id="exif"),
        pytest.param(0xE1, b"http://ns.adobe.com/xap/1.0/\0<x/>", "XMP", id="xmp"),
        pytest.param(0xE1, b"anything", "EXIF", id="another app1"),
        pytest.param(0xED, b"Photoshop 3.0\0", "IPTC", id="iptc"),
        pytest.param(0xFE, b"taken at home", "a comment", id="comment"),
        pytest.param(0xE2, b"MPF\0", "an application segment 2", id="a second picture"),
    ],
)
def test_a_photo_with_added_data_is_refused_by_its_name(phone, marker, body, named):
    data = with_segment(jpeg(), marker, body)

    error = assert_refused(phone.put(url(data), data), 422, "photo")

    assert error["found"] == named


def test_a_real_exif_block_with_a_place_in_it_is_refused(phone):
    exif = Image.Exif()
    exif.get_ifd(0x8825)[1] = "N"
    exif.get_ifd(0x8825)[2] = (48.0, 8.0, 0.0)
    data = jpeg(exif=exif)
    assert Image.open(io.BytesIO(data)).getexif().get_ifd(0x8825)

    error = assert_refused(phone.put(url(data), data), 422, "photo")

    assert error["found"] == "EXIF"


def test_data_behind_the_picture_is_refused(phone):
    data = jpeg() + jpeg()

    error = assert_refused(phone.put(url(data), data), 422, "photo")

    assert error["found"] == "data behind the picture"


def test_a_comment_between_two_scans_which_pillow_does_not_list_is_refused(phone):
    file = io.BytesIO()
    Image.effect_noise((96, 64), 90).convert("RGB").save(file, "JPEG", progressive=True)
    data = file.getvalue()
    second = data.index(b"\xff\xda", data.index(b"\xff\xda") + 2)
    data = data[:second] + with_segment(b"\xff\xd8", 0xFE, b"taken at home")[2:] + data[second:]
    with Image.open(io.BytesIO(data)) as image:
        image.load()
        assert "comment" not in image.info

    error = assert_refused(phone.put(url(data), data), 422, "photo")

    assert error["found"] == "a comment"


def test_a_forty_megapixel_photo_is_refused(phone):
    data = jpeg(8000, 5000, quality=10)
    assert len(data) < photo_store.MOST_BYTES

    error = assert_refused(phone.put(url(data), data), 413, "photo")

    assert error["found"] == "8000 x 5000 pixels"


def test_a_picture_that_claims_a_gigapixel_is_refused_before_it_is_decoded(phone, monkeypatch):
    data = bytearray(jpeg())
    size = data.index(b"\xff\xc0") + 5
    data[size : size + 4] = (60000).to_bytes(2) * 2
    monkeypatch.setattr("PIL.Image.open", lambda *a, **k: pytest.fail("decoded"))

    assert_refused(phone.put(url(bytes(data)), bytes(data)), 413, "photo")


def test_more_than_four_megabytes_are_refused(phone):
    data = b"\xff\xd8\xff" + b"\0" * photo_store.MOST_BYTES

    assert_refused(phone.put(url(data), data), 413, "body")


def test_a_photo_as_large_as_the_app_makes_them_is_taken(phone):
    data = jpeg(2048, 2048)

    assert phone.put(url(data), data).status_code == 200


@pytest.mark.parametrize("options", [{"progressive": True}, {"restart_marker_blocks": 2}])
def test_other_kinds_of_jpeg_are_taken(phone, options):
    noise = Image.effect_noise((96, 64), 90).convert("RGB")
    file = io.BytesIO()
    noise.save(file, "JPEG", **options)

    assert phone.put(url(file.getvalue()), file.getvalue()).status_code == 200


def test_scans_without_end_are_refused():
    data = jpeg()
    start = data.index(b"\xff\xda")
    scan = data[start:-2]

    with pytest.raises(jpeg_module.NotJpeg, match="too many scans"):
        jpeg_module.read(data[:start] + scan * 70 + b"\xff\xd9")


@pytest.mark.parametrize(
    ("name", "status", "field"),
    [
        ("x", 400, "sha256"),
        ("A" * 64, 400, "sha256"),
        ("g" * 64, 400, "sha256"),
        ("..%2f..%2fetc", 404, "path"),
    ],
)
def test_a_name_that_is_no_hash_is_refused(phone, name, status, field):
    assert_refused(phone.put(f"/api/photos/{name}", jpeg()), status, field)


def test_photos_are_for_paired_phones_only(stranger):
    data = jpeg()

    assert_refused(stranger.put(url(data), data), 401, "session")
    assert_refused(stranger.get(url(data)), 401, "session")


def test_an_event_may_come_before_its_photo_which_is_then_wanted(phone):
    data = jpeg()
    phone.record(kind="photo_taken", data=photo_taken(data))

    wanted = phone.synced()["photos_wanted"]
    phone.put(url(data), data)

    assert wanted == [url(data)[-64:]]
    assert phone.synced(cursor=1)["photos_wanted"] == []


def test_a_photo_may_come_before_its_event(phone):
    data = jpeg()
    phone.put(url(data), data)
    phone.record(kind="photo_taken", data=photo_taken(data), job=JOB)

    assert phone.synced()["photos_wanted"] == []


def test_only_the_phone_that_took_a_photo_is_asked_for_it(phone, new_phone):
    data = jpeg()
    phone.record(kind="photo_taken", data=photo_taken(data))
    phone.synced()

    other = new_phone("d00000000000000bb")

    assert other.synced()["photos_wanted"] == []


def test_a_small_version_of_a_photo_is_drawn_for_whoever_has_the_job(phone):
    file = io.BytesIO()
    Image.effect_noise((2048, 1536), 60).convert("RGB").save(file, "JPEG", quality=90)
    data = file.getvalue()
    phone.put(url(data), data)

    answer = phone.get(f"{url(data)}/small")

    assert answer.mimetype == "image/jpeg"
    with Image.open(io.BytesIO(answer.data)) as small:
        assert small.size == (480, 360)
    assert len(answer.data) < len(data) / 10
    assert jpeg_module.read(answer.data).extras == []


def test_a_small_picture_is_not_made_larger_and_one_that_is_not_here_yet_is_no_fault(phone):
    data = jpeg()
    phone.put(url(data), data)

    with Image.open(io.BytesIO(phone.get(f"{url(data)}/small").data)) as small:
        assert small.size == (64, 48)
    assert phone.get(f"/api/photos/{'0' * 64}/small").status_code == 204
    assert_refused(phone.get("/api/photos/no-digest/small"), 400, "sha256")


def test_a_stranger_gets_no_small_version(phone, stranger):
    data = jpeg()
    phone.put(url(data), data)

    assert stranger.get(f"{url(data)}/small").status_code == 401


SECRET = b"where and when it was taken " * 300


def segment(marker, body):
    return b"\xff" + bytes([marker]) + (len(body) + 2).to_bytes(2) + body


def spare_tables():
    """Return one quantization table again and again, of which a decoder uses the last."""
    return segment(0xDB, b"".join(b"\3" + SECRET[at : at + 64] for at in range(0, 6400, 64)))


@pytest.mark.parametrize(
    ("before_scan", "behind_scan", "named"),
    [
        pytest.param(b"\xff" * 5000, b"", "filling between segments", id="filling"),
        pytest.param(spare_tables(), b"", "a table that nothing uses", id="tables"),
        pytest.param(b"", segment(0xDB, b"\0" + SECRET[:64]), "a table that nothing uses", id="late table"),
        pytest.param(segment(0xCC, SECRET), b"", "a segment CC that no picture needs", id="other coding"),
        pytest.param(b"", segment(0xDC, SECRET), "a segment DC that no picture needs", id="lines"),
        pytest.param(b"", SECRET, "data behind the picture", id="behind the last block"),
        pytest.param(b"", b"\xff\xd0" + SECRET, "data behind the picture", id="behind a restart"),
    ],
)
def test_what_nobody_sees_is_not_hidden_where_a_decoder_passes_over_it(
    phone, before_scan, behind_scan, named
):
    plain = jpeg()
    scan = plain.index(b"\xff\xda")
    data = plain[:scan] + before_scan + plain[scan:-2] + behind_scan + plain[-2:]
    with Image.open(io.BytesIO(data)) as image, Image.open(io.BytesIO(plain)) as shown:
        if named != "a segment CC that no picture needs":
            assert image.tobytes() == shown.tobytes()

    error = assert_refused(phone.put(url(data), data), 422, "photo")

    assert error["found"] == named


@pytest.mark.parametrize("size", [(1, 1), (7, 9), (640, 480)])
@pytest.mark.parametrize("colour", [(128, 128, 128), (0, 0, 0), (255, 0, 0)])
@pytest.mark.parametrize("options", [{}, {"optimize": True}, {"progressive": True}, {"subsampling": 0}])
def test_a_picture_of_one_colour_has_nothing_that_is_not_shown(size, colour, options):
    assert photo_store.check(jpeg(*size, colour, **options)).extras == []


@pytest.mark.parametrize("subsampling", [0, 2])
@pytest.mark.parametrize("size", [(1024, 768), (333, 501), (640, 8)])
def test_a_photo_as_cameras_make_them_is_decoded_once(monkeypatch, size, subsampling):
    decoded, decode = [], photo_store._decoded
    monkeypatch.setattr(photo_store, "_decoded", lambda data: decoded.append(data) or decode(data))
    # About one bit a pixel at this quality; the same one each time.
    grain = Image.frombytes("L", size, random.Random(1).randbytes(size[0] * size[1]))
    noise = grain.convert("RGB").filter(ImageFilter.GaussianBlur(2))
    file = io.BytesIO()
    noise.save(file, "JPEG", quality=85, subsampling=subsampling)

    picture = photo_store.check(file.getvalue())

    assert (picture.width, picture.height) == size
    assert len(decoded) == 1
