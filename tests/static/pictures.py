"""Pictures made up for tests, as files that a phone might hand over."""

import base64
import io

from PIL import Image
from PIL import ImageDraw


def picture(size=(400, 300), corner="#c00000") -> Image.Image:
    """Return a picture whose top left quarter alone has a colour of its own."""
    image = Image.new("RGB", size, "#e0e0e0")
    ImageDraw.Draw(image).rectangle((0, 0, size[0] // 2, size[1] // 2), fill=corner)
    return image


def encoded(image: Image.Image, form="JPEG", **options) -> bytes:
    """Return the picture as a file."""
    file = io.BytesIO()
    image.save(file, form, **options)
    return file.getvalue()


def as_text(data: bytes) -> str:
    """Return bytes as a page is given them, for `Uint8Array.from(atob(text), (sign) => sign.charCodeAt(0))`.

    As a list of numbers each byte costs a driver of browsers as much as a whole text.
    """
    return base64.b64encode(data).decode()


def with_location(orientation=1) -> Image.Exif:
    """Return what a phone writes beside a picture: where it was, and how it was held."""
    exif = Image.Exif()
    exif[0x0112] = orientation
    exif[0x010F] = "CAMERA-MAKE-OF-THE-TEST"
    exif.get_ifd(0x8825).update({1: "N", 2: (51.0, 28.0, 38.0), 3: "W", 4: (0.0, 0.0, 5.0)})
    return exif
