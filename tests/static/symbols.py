"""Makers' symbols as they are found on parts and bags, written by zxing-cpp."""

import numpy
import zxingcpp
from PIL import Image

CODE_128 = zxingcpp.BarcodeFormat.Code128
DATA_MATRIX = zxingcpp.BarcodeFormat.DataMatrix


def envelope(*elements: str) -> str:
    """Return elements with their data identifiers in an ISO/IEC 15434 envelope of format 06."""
    return "[)>\x1e06" + "".join("\x1d" + element for element in elements) + "\x1e\x04"


def symbol(text: str, form: zxingcpp.BarcodeFormat, pixels: int = 6) -> Image.Image:
    """Return a symbol with its quiet zone, `pixels` a module."""
    written = zxingcpp.create_barcode(text, form).to_image(scale=pixels, add_quiet_zones=True)
    return Image.fromarray(numpy.array(written)).convert("RGB")
