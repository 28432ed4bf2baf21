"""Pages of labels as a file format draws them: the core says what stands where, symbols are put in here."""

from collections.abc import Iterator
from typing import NamedTuple

from server.core.printing.face import Face
from server.core.printing.layout import Layout
from server.core.printing.sheet import Box
from server.core.printing.sheet import Line
from server.core.printing.sheet import pages as laid_out
from server.labelling.symbol import matrix


class Page(NamedTuple):
    """What is on one page."""

    layout: Layout
    boxes: list[Box]
    lines: list[Line]


def pages(codes: list[str], base: str, layout: Layout, face: Face) -> Iterator[Page]:
    """Lays `codes` out, as many pages as it takes."""
    for page in laid_out(codes, base, layout, face):
        boxes = list(page.boxes)
        for symbol in page.symbols:
            modules = matrix(symbol.text, face.choice.level)
            boxes.extend(_runs(modules, symbol.x, symbol.y, face.choice.dots))
        yield Page(layout, boxes, page.lines)


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
