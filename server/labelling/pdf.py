"""Writes pages of labels as one PDF: boxes at exact dots and text in a face that every reader has."""

import io
import math
from collections.abc import Iterable

from reportlab.pdfbase.pdfmetrics import stringWidth
from reportlab.pdfgen.canvas import Canvas

from server.core.printing.layout import Layout
from server.core.printing.sheet import Line
from server.labelling.sheet import Page
from server.words.spoken import text

_FACE = "Courier-Bold"


def draw(pages: Iterable[Page], layout: Layout, title: str) -> bytes:
    """Returns the file."""
    file = io.BytesIO()
    point = 72 / layout.dpi
    # A hair less: a reader that rounds up to whole dots would else stretch the page by one.
    size = [math.floor(side * point * 1e4 - 1) / 1e4 for side in (layout.page_width, layout.page_height)]
    canvas = Canvas(file, pagesize=size, pageCompression=1, invariant=1)
    canvas.setTitle(title)
    for page in pages:
        # One change of coordinates: from here on the unit is a dot, counted from the upper left corner.
        canvas.translate(0, size[1])
        canvas.scale(point, -point)
        path = canvas.beginPath()
        for box in page.boxes:
            path.rect(*box)
        canvas.drawPath(path, stroke=0, fill=1)
        for line in page.lines:
            _write(canvas, line)
        canvas.showPage()
    canvas.save()
    return file.getvalue()


def _write(canvas: Canvas, line: Line) -> None:
    canvas.saveState()
    canvas.translate(line.x / 100, line.y / 100)
    canvas.scale(1, -1)
    canvas.rotate(90 if line.turned else 0)
    canvas.setFont(_FACE, line.size / 100)
    write = canvas.drawCentredString if line.centred else canvas.drawString
    write(0, 0, text(line.text), charSpace=_apart(line))
    canvas.restoreState()


def _apart(line: Line) -> float:
    """Returns the room between two letters beyond what the face has, in dots."""
    return line.pitch / 100 - stringWidth("0", _FACE, line.size / 100) if line.pitch else 0
