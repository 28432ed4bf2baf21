"""Puts labels on pages: where each symbol, code and cut mark goes, whatever draws them."""

from collections import namedtuple

from ..codes import labels
from ..messages import message
from .face import PITCH
from .face import QUIET_MODULES
from .face import Face
from .layout import Layout

_NOTE = 340  # 1/100 mm, like all here
_MARK = 200  # half a cut mark
_MARK_WIDTH = 34
_RULER_MM = 100
_RULER_WIDTH = 50
_FOOT = 600  # from the last row to the note
_UNPRINTED = 500  # at the foot of the paper

# A filled black rectangle, in dots from the upper left corner of the page.
Box = namedtuple("Box", ("x", "y", "width", "height"))
# A line of text, or a message; (x, y) is on its baseline: its middle, or its start when it is not `centred`.
# One that is `turned` runs upwards; `pitch` leads from the middle of a letter to the next, 0 is as the face
# has it. Lengths are in hundredths of a dot.
Line = namedtuple("Line", ("x", "y", "size", "text", "centred", "turned", "pitch"))
# A symbol by its text; (x, y) is the corner of its first module, in dots: the margin lies outside.
Symbol = namedtuple("Symbol", ("text", "x", "y"))
# `ruler`: whether there is a bar at the foot to check the print with.
Page = namedtuple("Page", ("boxes", "lines", "symbols", "ruler"))


def pages(codes: list, base: str, layout: Layout, face: Face) -> list:
    """Lay `codes` out, on as many pages as it takes."""
    return [
        _page(codes[start : start + layout.labels], base, layout, face)
        for start in range(0, len(codes), layout.labels)
    ]


def _page(codes: list, base: str, layout: Layout, face: Face) -> Page:
    boxes = _cut_marks(layout, len(codes)) if layout.marked else []
    lines = []
    symbols = []
    quiet = QUIET_MODULES * face.choice.dots
    for place in range(len(codes)):
        x, y = layout.corner(place)
        symbols.append(Symbol(labels.address(codes[place], base), x + face.x + quiet, y + face.y + quiet))
        at = (x * 100 + face.text_x, y * 100 + face.text_y)
        shown, pitch = labels.shown(codes[place]), face.type_size * PITCH // 100
        lines.append(Line(at[0], at[1], face.type_size, shown, True, face.turned, pitch))
    ruler = _ruler(layout) if layout.marked else None
    if ruler is not None:
        boxes.append(ruler)
        lines.extend(_note(base, layout))
    return Page(boxes, lines, symbols, ruler is not None)


def _cut_marks(layout: Layout, count: int) -> list:
    """Return a small cross at each corner of each of the first `count` labels."""
    corners = {}
    for place in range(count):
        x, y = layout.corner(place)
        for right in (0, layout.width):
            for below in (0, layout.height):
                corners[x + right, y + below] = True
    half, thick = layout.dots(_MARK), layout.dots(_MARK_WIDTH)
    boxes = []
    for x, y in sorted(corners):
        boxes.append(Box(x - half, y - thick // 2, 2 * half, thick))
        boxes.append(Box(x - thick // 2, y - half, thick, 2 * half))
    return boxes


def _ruler(layout: Layout) -> Box | None:
    """Return the bar below the note; None where the foot has no room for both."""
    x, y = _foot(layout)
    ruler = Box(x, y + layout.dots(_NOTE) * 28 // 10, layout.dots(_RULER_MM * 100), layout.dots(_RULER_WIDTH))
    has_room = ruler.y + ruler.height <= layout.page_height - layout.dots(_UNPRINTED)
    return ruler if has_room else None


def _note(base: str, layout: Layout) -> list:
    """Return the lines that say how to print the page and how to check the print."""
    x, y = _foot(layout)
    size = layout.dots(_NOTE)
    texts = (
        message("printing-note-scale", length=_RULER_MM),
        message("printing-note-address", address=base),
    )
    return [
        Line(x * 100, (y + n * (size * 14 // 10)) * 100, size * 100, texts[n], False, False, 0)
        for n in range(len(texts))
    ]


def _foot(layout: Layout) -> tuple:
    """Return where the note begins, below the last row."""
    x, y = layout.corner((layout.rows - 1) * layout.columns)
    return x, y + layout.height + layout.dots(_FOOT)
