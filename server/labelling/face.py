"""What is on one label: the symbol as large and as robust as the room allows, the code in letters beside it.

The code stands under the symbol or, where that leaves the symbol more room, turned at its side.
"""

from typing import NamedTuple

from server.core import labels
from server.core.errors import BadInput
from server.labelling.layout import Layout
from server.labelling.reach import wanted_dots
from server.labelling.symbol import LEVELS
from server.labelling.symbol import Choice
from server.labelling.symbol import address
from server.labelling.symbol import choices
from server.labelling.symbol import choose

CHARACTER_WIDTH = 0.6  # of the type size, in the fixed-pitch faces that are used
_EDGE_MM = 0.4  # that stay free round a label, because no cut and no printer is exact
_TYPE_MM = 6.3  # type is no larger than this,
_LEAST_TYPE_MM = 3.0  # and the symbol leaves room for this
# Of the type size: how high capitals stand in the tallest of the faces, and what a line of them takes.
_BASELINE = 0.78
_LINE = 0.84

ANY_CODE = "A2345"  # as long as every code; it fails its check, so nothing that is printed goes by it


class Face(NamedTuple):
    """Where symbol and code stand on a label, in dots from its upper left corner."""

    choice: Choice
    x: int  # of the symbol's margin
    y: int
    type_size: float
    turned: bool
    text_x: float  # the middle of the code along its line
    text_y: float


def face_of(layout: Layout, base: str, distance_cm: int) -> Face:
    """Returns the face that all labels of a layout share: their texts are equally long."""
    text = address(ANY_CODE, base)
    edge = layout.dots(_EDGE_MM)
    room = (layout.width - 2 * edge, layout.height - 2 * edge)
    wanted = wanted_dots(layout, distance_cm)
    best = None
    for turned in (False, True) if layout.height >= layout.width else (True, False):
        along, thick = (room[1], room[0]) if turned else room
        least = min(layout.dots(_LEAST_TYPE_MM), _longest_type(along)) * _LINE
        choice = choose(choices(text, int(min(along, thick - least))), wanted)
        if choice and (best is None or _rank(choice, wanted) > _rank(best[0], wanted)):
            best = (choice, turned)
    if best is None:
        raise BadInput("label", layout.words, f"labels that have room for a symbol with the address {base}")
    return _placed(layout, edge, *best)


def _placed(layout: Layout, edge: int, choice: Choice, turned: bool) -> Face:
    """Puts symbol and code, as one block, into the middle of the label."""
    along, thick = (layout.height, layout.width) if turned else (layout.width, layout.height)
    strip = thick - 2 * edge - choice.across
    size = min(layout.dots(_TYPE_MM), _longest_type(along - 2 * edge), strip / _LINE)
    start = edge + int((strip - size * _LINE) / 2)
    beside = (along - choice.across) // 2
    line = start + choice.across + size * _BASELINE
    if turned:
        return Face(choice, start, beside, size, True, line, along / 2)
    return Face(choice, beside, start, size, False, along / 2, line)


def _longest_type(along: float) -> float:
    """Returns the type size at which a code fills a line of this length."""
    return along / (len(labels.shown(ANY_CODE)) * CHARACTER_WIDTH)


def _rank(choice: Choice, wanted: int) -> tuple:
    level = -list(LEVELS).index(choice.level)
    return (1, level, choice.dots) if choice.dots >= wanted else (0, choice.dots, level)
