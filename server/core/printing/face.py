"""What is on one label: the symbol as large and as robust as the room allows, the code in letters beside it.

The code stands under the symbol or, where that leaves the symbol more room, turned at its side.
Sources: ISO/IEC 18004 for the levels and the margin of 4 modules.
"""

from collections import namedtuple

from ..codes import labels
from ..errors import BadInput
from ..messages import message
from .layout import LEAST_EDGE
from .layout import Layout
from .scan_distance import LEAST_DOTS
from .scan_distance import wanted_dots

QUIET_MODULES = 4  # of margin on every side
LEVELS = ("H", "Q", "M", "L")  # best first
COVERED = {"H": 30, "Q": 25, "M": 15, "L": 7}  # how much of a symbol may be covered, about, in percent

# Of the type size, in percent: a character in the fixed-pitch faces that are used, and from the middle of one
# to the next. Bold ones come within a dot of each other, W and M touch, and a thermal print runs a dot wide.
_CHARACTER, PITCH = 60, 72
_TYPE = 630  # 1/100 mm: type is no larger than this,
_LEAST_TYPE = 300  # and the symbol leaves room for this
# In percent of the type size: how high capitals stand in the tallest of the faces, what a line takes.
_BASELINE = 78
_LINE = 84

ANY_CODE = "A2345"  # as long as every code; it fails its check, so nothing that is printed goes by it

# x, y: of the symbol's margin, in dots from the label's upper left corner; type_size, text_x, text_y (the
# middle of the code along its line, on its baseline): in hundredths of a dot; edge: dots free all round.
Face = namedtuple("Face", ("choice", "x", "y", "type_size", "turned", "text_x", "text_y", "edge"))


class Choice(namedtuple("Choice", ("level", "version", "dots"))):
    """How a symbol is drawn: its level, its version, and how many dots wide a module is."""

    @property
    def across(self) -> int:
        """How many dots the symbol takes with its margin."""
        return modules_across(self.version) * self.dots


def modules_across(version: int) -> int:
    """Return the modules of a symbol's side with the margin on both ends."""
    return 17 + 4 * version + 2 * QUIET_MODULES


def choices(versions: dict, room: int) -> list:
    """Return how a text can be drawn in a square of `room` dots, the best level first.

    `versions` is level -> the smallest version that holds the text; a level that none does is left out.
    """
    found = []
    for level in LEVELS:
        version = versions.get(level)
        dots = room // modules_across(version) if version else 0
        if dots > 0:
            found.append(Choice(level, version, dots))
    return found


def choose(found: list, wanted: int) -> Choice | None:
    """Return the best level with modules of `wanted` dots; where none has, the largest modules."""
    widest = None
    for choice in found:
        if choice.dots >= wanted:
            return choice
        if widest is None or choice.dots > widest.dots:
            widest = choice
    return widest


def face_of(layout: Layout, versions: dict, base: str, distance_cm: int) -> Face:
    """Return the face that all labels of a layout share: their texts are equally long.

    It keeps the layout's edge free, or the least one where modules would else smear.
    """
    wanted = wanted_dots(layout.dpi, distance_cm)
    best, edge = None, 0
    for length in (layout.edge, LEAST_EDGE):
        larger = _largest(layout, versions, wanted, layout.dots(length))
        if larger and (best is None or larger[0].dots > best[0].dots):
            margin = layout.dots(LEAST_EDGE) + QUIET_MODULES * larger[0].dots
            best, edge = larger, min(layout.dots(length), margin)
        if best and best[0].dots >= LEAST_DOTS:
            break
    if best is None:
        raise BadInput("label", (layout.words,), message("printing-wanted-room", address=base))
    return _placed(layout, edge, best[0], best[1])


def _largest(layout: Layout, versions: dict, wanted: int, edge: int) -> tuple | None:
    """Return the best choice with such an edge, and whether the code stands turned beside it.

    Along the symbol's sides its own margin keeps the edge free as well.
    """
    room = (layout.width - 2 * edge, layout.height - 2 * edge)
    best = None
    for turned in (False, True) if layout.height >= layout.width else (True, False):
        along, thick = (room[1], room[0]) if turned else room
        side = along + 2 * (edge - layout.dots(LEAST_EDGE))
        least = min(layout.dots(_LEAST_TYPE) * 100, _longest_type(along)) * _LINE // 100
        choice = choose(choices(versions, min(side * 100, thick * 100 - least) // 100), wanted)
        if choice and (best is None or _rank(choice, wanted) > _rank(best[0], wanted)):
            best = (choice, turned)
    return best


def _placed(layout: Layout, edge: int, choice: Choice, turned: bool) -> Face:
    """Put symbol and code, as one block, into the middle of the label."""
    along, thick = (layout.height, layout.width) if turned else (layout.width, layout.height)
    strip = thick - 2 * edge - choice.across
    size = min(layout.dots(_TYPE) * 100, _longest_type(along - 2 * edge), strip * 10000 // _LINE)
    start = edge + (strip * 100 - size * _LINE // 100) // 200
    beside = (along - choice.across) // 2
    line = (start + choice.across) * 100 + size * _BASELINE // 100
    if turned:
        return Face(choice, start, beside, size, True, line, along * 50, edge)
    return Face(choice, beside, start, size, False, along * 50, line, edge)


def _longest_type(along: int) -> int:
    """Return the type size, in hundredths of a dot, at which a code fills a line of so many dots."""
    count = len(labels.shown(ANY_CODE))
    return along * 10000 // (_CHARACTER + (count - 1) * PITCH)


def _rank(choice: Choice, wanted: int) -> tuple:
    level = -LEVELS.index(choice.level)
    return (1, level, choice.dots) if choice.dots >= wanted else (0, choice.dots, level)
