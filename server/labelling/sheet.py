"""Puts labels on pages: where each module, code and cut mark goes, whatever the file format."""

from collections.abc import Iterator
from typing import NamedTuple

from server.core import labels
from server.labelling.face import Face
from server.labelling.layout import Layout
from server.labelling.symbol import QUIET_MODULES
from server.labelling.symbol import address
from server.labelling.symbol import matrix

_NOTE_MM = 3.4
_MARK_MM = 2.0  # half a cut mark
_MARK_WIDTH_MM = 0.34
_RULER_MM = 100
_FOOT_MM = 6.0  # from the last row to the note


class Box(NamedTuple):
    """A filled black rectangle, in dots from the upper left corner of the page."""

    x: int
    y: int
    width: int
    height: int


class Line(NamedTuple):
    """A line of text; (x, y) is on its baseline: its middle, or its start when it is not `centred`.

    One that is `turned` runs upwards.
    """

    x: float
    y: float
    size: float
    text: str
    centred: bool = True
    turned: bool = False


class Page(NamedTuple):
    """What is on one page."""

    layout: Layout
    boxes: list[Box]
    lines: list[Line]


def pages(codes: list[str], base: str, layout: Layout, face: Face) -> Iterator[Page]:
    """Lays `codes` out, as many pages as it takes."""
    for start in range(0, len(codes), layout.labels):
        yield _page(codes[start : start + layout.labels], base, layout, face)


def _page(codes: list[str], base: str, layout: Layout, face: Face) -> Page:
    page = Page(layout, _cut_marks(layout, len(codes)) if layout.marked else [], [])
    for place, code in enumerate(codes):
        x, y = layout.corner(place)
        quiet = QUIET_MODULES * face.choice.dots
        modules = matrix(address(code, base), face.choice.level)
        page.boxes.extend(_runs(modules, x + face.x + quiet, y + face.y + quiet, face.choice.dots))
        at = (x + face.text_x, y + face.text_y)
        page.lines.append(Line(*at, face.type_size, labels.shown(code), turned=face.turned))
    if layout.marked:
        _add_note(page, base)
    return page


def _runs(modules: list[list[bool]], left: int, top: int, dots: int) -> Iterator[Box]:
    """Yields the dark modules, those side by side as one box, so that no seam shows."""
    for row, cells in enumerate(modules):
        start = None
        for column, dark in enumerate([*cells, False]):
            if dark and start is None:
                start = column
            elif not dark and start is not None:
                yield Box(left + start * dots, top + row * dots, (column - start) * dots, dots)
                start = None


def _cut_marks(layout: Layout, count: int) -> list[Box]:
    """Returns a small cross at each corner of each of the first `count` labels."""
    corners = set()
    for place in range(count):
        x, y = layout.corner(place)
        corners |= {(x + right, y + below) for right in (0, layout.width) for below in (0, layout.height)}
    half, thick = layout.dots(_MARK_MM), layout.dots(_MARK_WIDTH_MM)
    boxes = []
    for x, y in sorted(corners):
        boxes.append(Box(x - half, y - thick // 2, 2 * half, thick))
        boxes.append(Box(x - thick // 2, y - half, thick, 2 * half))
    return boxes


def _add_note(page: Page, base: str) -> None:
    """Adds the foot where it has room: how to print it, and a ruler to check the print with."""
    layout = page.layout
    size = layout.dots(_NOTE_MM)
    x, y = layout.corner((layout.rows - 1) * layout.columns)
    y += layout.height + layout.dots(_FOOT_MM)
    ruler = Box(x, y + round(2.8 * size), layout.dots(_RULER_MM), layout.dots(0.5))
    if ruler.y + ruler.height > layout.page_height - layout.dots(5):
        return
    for text in (
        f'Print at 100 %, not "fit to page", on matt stock. The bar is {_RULER_MM} mm long.',
        f"These labels belong to {base} and open there only.",
    ):
        page.lines.append(Line(x, y, size, text, centred=False))
        y += round(1.4 * size)
    page.boxes.append(ruler)
