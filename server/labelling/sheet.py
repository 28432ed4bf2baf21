"""Lays labels out on A4: where each module, code and cut mark goes, whatever the file format.

Lengths are in dots of 1/300 inch, so that a module is a whole number of dots on a 300, 600 or 1200
dpi printer. Source of the sizes: a module of at least 0.5 mm and 4 modules of margin all round read
reliably at arm's length; level Q because labels get dirty.
"""

from typing import NamedTuple

from server.core import labels
from server.labelling.symbol import QUIET_MODULES
from server.labelling.symbol import address
from server.labelling.symbol import matrix
from server.refusals import CommandRefused

DOTS_A_MM = 300 / 25.4
PAGE_WIDTH = 210 * DOTS_A_MM
PAGE_HEIGHT = 297 * DOTS_A_MM

MODULE = 7  # 0.593 mm
COLUMNS, ROWS = 7, 8
CELL_WIDTH, CELL_HEIGHT = 307, 378  # 26 mm, 32 mm
CODE_SIZE = 74  # 6.3 mm type
NOTE_SIZE = 40
MARK = 24  # half a cut mark, 2 mm
MARK_WIDTH = 4
RULER_MM = 100

LEFT = round((PAGE_WIDTH - COLUMNS * CELL_WIDTH) / 2)
TOP = round(15 * DOTS_A_MM)


class Box(NamedTuple):
    """A filled black rectangle."""

    x: float
    y: float
    width: float
    height: float


class Line(NamedTuple):
    """A line of text; `x` is its middle, or its start when it is not `centred`."""

    x: float
    baseline: float
    size: float
    text: str
    centred: bool


class Page(NamedTuple):
    """What is on one sheet."""

    boxes: list[Box]
    lines: list[Line]


def pages(codes: list[str], base: str) -> list[Page]:
    """Lays `codes` out, as many sheets as it takes."""
    a_sheet = COLUMNS * ROWS
    return [_page(codes[start : start + a_sheet], base) for start in range(0, len(codes), a_sheet)]


def _page(codes: list[str], base: str) -> Page:
    boxes = _cut_marks(len(codes))
    lines = []
    for place, code in enumerate(codes):
        x = LEFT + place % COLUMNS * CELL_WIDTH
        y = TOP + place // COLUMNS * CELL_HEIGHT
        modules = matrix(address(code, base))
        across = (len(modules) + 2 * QUIET_MODULES) * MODULE
        if across > CELL_WIDTH:
            raise CommandRefused(
                f"The address {base} is too long for a label: its symbol would not fit. Serve a new "
                "data folder under a shorter name."
            )
        corner = x + (CELL_WIDTH - across) // 2 + QUIET_MODULES * MODULE
        boxes += _runs(modules, corner, y + QUIET_MODULES * MODULE)
        middle = x + CELL_WIDTH / 2
        lines.append(Line(middle, y + across + CODE_SIZE * 0.75, CODE_SIZE, labels.shown(code), True))
    boxes_of_note, lines_of_note = _note(base)
    return Page(boxes + boxes_of_note, lines + lines_of_note)


def _runs(modules: list[list[bool]], left: int, top: int) -> list[Box]:
    """Returns the dark modules, those side by side as one box, so that no seam shows."""
    boxes = []
    for row, cells in enumerate(modules):
        start = None
        for column, dark in enumerate([*cells, False]):
            if dark and start is None:
                start = column
            elif not dark and start is not None:
                width = (column - start) * MODULE
                boxes.append(Box(left + start * MODULE, top + row * MODULE, width, MODULE))
                start = None
    return boxes


def _cut_marks(count: int) -> list[Box]:
    """Returns a small cross at each corner of each of the first `count` labels."""
    corners = {
        (place % COLUMNS + right, place // COLUMNS + down)
        for place in range(count)
        for right in (0, 1)
        for down in (0, 1)
    }
    boxes = []
    for column, row in sorted(corners):
        x, y = LEFT + column * CELL_WIDTH, TOP + row * CELL_HEIGHT
        boxes.append(Box(x - MARK, y - MARK_WIDTH / 2, 2 * MARK, MARK_WIDTH))
        boxes.append(Box(x - MARK_WIDTH / 2, y - MARK, MARK_WIDTH, 2 * MARK))
    return boxes


def _note(base: str) -> tuple[list[Box], list[Line]]:
    """Returns the foot of the sheet: how to print it, and a ruler to check the print with."""
    y = TOP + ROWS * CELL_HEIGHT + 80
    texts = (
        'Print at 100 %, not "fit to page", on matt stock. The bar is 100 mm long.',
        f"These labels belong to {base} and open there only.",
    )
    lines = [
        Line(LEFT, y + NOTE_SIZE * 1.4 * index, NOTE_SIZE, text, False) for index, text in enumerate(texts)
    ]
    return [Box(LEFT, y + 2 * NOTE_SIZE * 1.4, RULER_MM * DOTS_A_MM, 6)], lines
