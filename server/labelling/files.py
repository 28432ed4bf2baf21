"""Labels as files: one PDF with all pages, or one SVG for each page."""

from collections.abc import Iterator

from server.core.errors import BadInput
from server.core.messages import any_of
from server.core.messages import message
from server.core.printing.face import Face
from server.core.printing.layout import Layout
from server.labelling import svg
from server.labelling.sheet import pages

FORMATS = {"pdf": "application/pdf", "svg": "image/svg+xml"}


def format_of(name: str) -> str:
    """Returns the format that was asked for."""
    if name not in FORMATS:
        raise BadInput("format", name, message("server-one-of", choices=any_of(list(FORMATS))))
    return name


def drawn(codes: list[str], base: str, layout: Layout, face: Face, form: str, title: str) -> Iterator[bytes]:
    """Yields the files, in order of their pages."""
    sheets = pages(codes, base, layout, face)
    if form == "pdf":
        # Here: its library takes a tenth of a server's start, and most starts print nothing.
        from server.labelling import pdf

        yield pdf.draw(sheets, layout, title)
    else:
        yield from map(svg.draw, sheets)


def page_count(labels: int, layout: Layout) -> int:
    """Returns how many pages so many labels take."""
    return -(-labels // layout.labels)
