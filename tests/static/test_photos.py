"""A photo is drawn anew before it is kept: upright, small, without location, or refused in plain words."""

import base64
import hashlib
import io

import pytest
from PIL import Image

from server.photos import jpeg
from tests.static.phone_parts import start_parts
from tests.static.pictures import encoded
from tests.static.pictures import picture
from tests.static.pictures import with_location

PREPARE = """async (base64) => {
  const { preparePhoto, startWords } = await import('/app/parts.js');
  await startWords();
  const bytes = Uint8Array.from(atob(base64), (c) => c.charCodeAt(0));
  try {
    const photo = await preparePhoto(new Blob([bytes]));
    const text = Array.from(new Uint8Array(photo.bytes), (b) => String.fromCharCode(b)).join('');
    return { ...photo, bytes: btoa(text) };
  } catch (error) {
    return { name: error.name, title: error.title, sentence: error.sentence };
  }
}"""


def prepare(page, file: bytes) -> dict:
    """Let the app prepare a file; its bytes come back as bytes."""
    answer = page.evaluate(PREPARE, base64.b64encode(file).decode())
    if "bytes" in answer:
        answer["bytes"] = base64.b64decode(answer["bytes"])
    return answer


def test_location_and_everything_else_beside_the_picture_is_gone(bare_page):
    file = encoded(picture(), exif=with_location(), comment=b"COMMENT-OF-THE-TEST")
    assert b"CAMERA-MAKE-OF-THE-TEST" in file
    assert b"Exif" in file

    photo = prepare(bare_page, file)

    assert photo["mime"] == "image/jpeg"
    for trace in (b"Exif", b"TEST", b"http://ns.adobe.com"):
        assert trace not in photo["bytes"]
    assert jpeg.read(photo["bytes"])[:3] == (400, 300, [])
    assert photo["sha256"] == hashlib.sha256(photo["bytes"]).hexdigest()
    assert (photo["width"], photo["height"]) == (400, 300)


def test_metadata_that_a_browser_writes_by_itself_is_cut_out(bare_page):
    file = encoded(picture(), exif=with_location(), comment=b"COMMENT-OF-THE-TEST", progressive=True)

    clean = bytes(
        bare_page.evaluate(
            """async (bytes) => {
              const { withoutMetadata } = await import('/app/parts.js');
              return Array.from(withoutMetadata(Uint8Array.from(bytes)));
            }""",
            list(file),
        )
    )

    assert jpeg.read(clean).extras == []
    assert Image.open(io.BytesIO(clean)).tobytes() == Image.open(io.BytesIO(file)).tobytes()


UPRIGHT = {
    1: [],
    2: [Image.Transpose.FLIP_LEFT_RIGHT],
    3: [Image.Transpose.ROTATE_180],
    4: [Image.Transpose.FLIP_TOP_BOTTOM],
    5: [Image.Transpose.TRANSPOSE],
    6: [Image.Transpose.ROTATE_90],
    7: [Image.Transpose.TRANSVERSE],
    8: [Image.Transpose.ROTATE_270],
}


@pytest.mark.parametrize("orientation", UPRIGHT)
def test_a_picture_is_turned_upright_once(bare_page, orientation):
    stored = picture()
    for turn in UPRIGHT[orientation]:
        stored = stored.transpose(turn)

    photo = prepare(bare_page, encoded(stored, exif=with_location(orientation)))

    seen = Image.open(io.BytesIO(photo["bytes"])).convert("RGB")
    assert seen.size == (400, 300)
    assert seen.getpixel((40, 40))[1] < 60  # the coloured corner is at the top left again
    assert min(seen.getpixel((360, 260))) > 180


@pytest.mark.parametrize("form", ["PNG", "WEBP"])
def test_other_forms_become_a_jpeg_on_white(bare_page, form):
    see_through = picture().convert("RGBA")
    see_through.paste((0, 0, 0, 0), (200, 150, 400, 300))

    photo = prepare(bare_page, encoded(see_through, form))

    seen = Image.open(io.BytesIO(photo["bytes"]))
    assert seen.format == "JPEG"
    assert min(seen.convert("RGB").getpixel((360, 260))) > 240


def test_a_picture_of_24_megapixels_is_scaled_to_2048(bare_page):
    photo = prepare(bare_page, encoded(picture((6000, 4000)), quality=40))

    assert (photo["width"], photo["height"]) == (2048, 1365)
    assert len(photo["bytes"]) < 4 * 1024 * 1024
    seen = Image.open(io.BytesIO(photo["bytes"])).convert("RGB")
    assert seen.getpixel((100, 100))[1] < 60


@pytest.mark.parametrize("form", ["JPEG", "PNG"])
def test_a_picture_of_40_megapixels_is_refused_before_it_is_opened(bare_page, form):
    problem = prepare(bare_page, encoded(Image.new("L", (8000, 5000)), form))

    assert problem["title"] == "This picture is too large"
    assert "It has 40 million points" in problem["sentence"]
    assert "Nothing was saved" in problem["sentence"]


def test_a_broken_picture_is_refused(bare_page):
    whole = encoded(picture((800, 600)), quality=95)

    for broken in (whole[: len(whole) // 2], whole[:-2], whole[:300]):
        assert prepare(bare_page, broken)["title"] == "This picture is damaged"


def test_a_heic_file_is_refused_with_a_way_out(bare_page):
    header = b"\0\0\0\x18ftypheic\0\0\0\0mif1heic" + bytes(200)

    problem = prepare(bare_page, header)

    assert problem["title"] == "This browser cannot open HEIC pictures"
    assert "JPEG" in problem["sentence"]


@pytest.mark.parametrize("file", [b"", b"%PDF-1.7 and more", b"<!doctype html><p>sign in</p>"])
def test_what_is_no_picture_is_refused(bare_page, file):
    assert prepare(bare_page, file)["title"] == "This file is not a picture"


def test_a_blank_drawing_is_noticed(bare_page):
    bare_page.evaluate("CanvasRenderingContext2D.prototype.drawImage = () => undefined")

    assert prepare(bare_page, encoded(picture()))["title"] == "This phone could not draw the picture"


def test_a_photo_is_shown_from_this_phone_and_missing_ones_are_none(bare_page):
    start_parts(bare_page)
    file = base64.b64encode(encoded(picture())).decode()
    bare_page.evaluate(
        """async (base64) => {
          const bytes = Uint8Array.from(atob(base64), (c) => c.charCodeAt(0));
          window.photo = await photos.prepare(new Blob([bytes]));
          await log.record([stock('a')], { photo });
        }""",
        file,
    )

    size = bare_page.evaluate(
        """async () => {
          const image = new Image();
          image.src = await photos.url(photo.sha256);
          await image.decode();
          return [image.naturalWidth, image.naturalHeight];
        }"""
    )

    assert size == [400, 300]
    assert bare_page.evaluate("photos.url(photo.sha256)") == bare_page.evaluate("photos.url(photo.sha256)")
