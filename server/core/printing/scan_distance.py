"""From how far a label can be scanned.

The rule, with its sources:
* A module is at least 4 printer dots wide: qrcode.com, howto/cell.html.
* A module is at least 3 pixels wide in the camera's picture: measured, `tests/bench/label_pixels.py`
  (every one of 120 symbols was read at 3.0 pixels and more, turned, tilted, blurred and noisy).
* The picture is 1280 pixels for an angle of view of 65 degrees: an assumption. Phones that give a finer
  picture read from further away.
"""

from ..errors import BadInput
from ..messages import message

LEAST_DOTS = 4  # a module
PIXELS_A_MODULE = 3
PICTURE_PIXELS = 1280
VIEW_DEGREES = 65
USUAL_CM = 20  # what the scanner tells people to hold it at
LEAST_CM, MOST_CM = 5, 100

RULE = message(
    "printing-rule", dots=LEAST_DOTS, pixels=PIXELS_A_MODULE, across=str(PICTURE_PIXELS), degrees=VIEW_DEGREES
)

# How much of the world a picture shows at a distance of 100,000: 2 * tan(65 / 2 degrees). A figure and no
# call, for the two hosts may differ in the last bit of a tangent.
_PICTURE = 127414
_HAIR = 200  # of a cm or a dot, the n-th part: a module that is right to a hair counts as right


def checked_distance(text) -> int:
    """Return a distance in cm as asked for."""
    if isinstance(text, str) and 1 <= len(text) <= 3 and all([each in "0123456789" for each in text]):
        if LEAST_CM <= int(text) <= MOST_CM:
            return int(text)
    raise BadInput("distance", text, message("printing-wanted-distance", least=LEAST_CM, most=MOST_CM))


def farthest_cm(dots: int, dpi: int) -> int:
    """Return from how far a module of so many dots still covers enough pixels, in whole cm."""
    over = dots * 254 * PICTURE_PIXELS * 100000
    under = dpi * PIXELS_A_MODULE * _PICTURE * 100
    return (over + under // _HAIR) // under


def wanted_dots(dpi: int, distance_cm: int) -> int:
    """Return how many dots a module has to be wide to be scanned from so far."""
    over = distance_cm * 100 * _PICTURE * PIXELS_A_MODULE * dpi
    under = PICTURE_PIXELS * 254 * 100000
    return max(LEAST_DOTS, -((under // _HAIR - over) // under))
