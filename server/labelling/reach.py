"""From how far a label can be scanned.

The rule, with its sources:
* A module is at least 4 printer dots wide: qrcode.com, howto/cell.html.
* A module is at least 3 pixels wide in the camera's picture: measured, `tests/bench/label_pixels.py`
  (every one of 120 symbols was read at 3.0 pixels and more, turned, tilted, blurred and noisy).
* The picture is 1280 pixels for an angle of view of 65 degrees: an assumption. Phones that give a finer
  picture read from further away.
"""

import math
import re

from server.core.errors import BadInput
from server.labelling.layout import Layout
from server.labelling.symbol import LEAST_DOTS

PIXELS_A_MODULE = 3
PICTURE_PIXELS = 1280
VIEW_DEGREES = 65
USUAL_CM = 20  # what the scanner tells people to hold it at
LEAST_CM, MOST_CM = 5, 100

RULE = (
    f"The rule: a module, the smallest square of the symbol, is at least {LEAST_DOTS} dots of the printer "
    f"(qrcode.com) and {PIXELS_A_MODULE} pixels of the camera's picture (measured with the engine of this "
    f"app's reader). A picture of {PICTURE_PIXELS} pixels for {VIEW_DEGREES} degrees is assumed; "
    "phones differ."
)

_PICTURE_A_DISTANCE = 2 * math.tan(math.radians(VIEW_DEGREES / 2))  # how much of the world a picture shows


def checked_distance(text: str) -> int:
    """Returns a distance in cm as asked for."""
    if not re.fullmatch(r"[0-9]{1,3}", text) or not LEAST_CM <= int(text) <= MOST_CM:
        raise BadInput("distance", text, f"{LEAST_CM} to {MOST_CM} cm")
    return int(text)


def reach_mm(module_mm: float) -> float:
    """Returns from how far a module of this width still covers enough pixels."""
    return module_mm * PICTURE_PIXELS / PIXELS_A_MODULE / _PICTURE_A_DISTANCE


def wanted_dots(layout: Layout, distance_cm: int) -> int:
    """Returns how many dots a module has to be wide to be scanned from so far."""
    module_mm = distance_cm * 10 * _PICTURE_A_DISTANCE * PIXELS_A_MODULE / PICTURE_PIXELS
    # The rounding keeps a module that is right to a hair from asking for one dot more.
    return max(LEAST_DOTS, math.ceil(round(module_mm / layout.dot_mm, 2)))
