"""Writes one sheet of labels as SVG, at its size on paper."""

from xml.sax.saxutils import escape

from server.labelling.sheet import PAGE_HEIGHT
from server.labelling.sheet import PAGE_WIDTH
from server.labelling.sheet import Box
from server.labelling.sheet import Line
from server.labelling.sheet import Page

_FACE = "ui-monospace, 'DejaVu Sans Mono', 'Courier New', monospace"


def draw(page: Page) -> bytes:
    """Returns the file."""
    marks = "".join(_box(box) for box in page.boxes)
    texts = "\n".join(_text(line) for line in page.lines)
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="210mm" height="297mm" '
        f'viewBox="0 0 {PAGE_WIDTH:.3f} {PAGE_HEIGHT:.3f}">\n'
        f'<rect width="100%" height="100%" fill="#fff"/>\n'
        f'<path fill="#000" shape-rendering="crispEdges" d="{marks}"/>\n'
        f'<g fill="#000" font-family="{_FACE}" font-weight="700">\n{texts}\n</g>\n</svg>\n'
    ).encode()


def _box(box: Box) -> str:
    return f"M{box.x:g} {box.y:g}h{box.width:.7g}v{box.height:g}h-{box.width:.7g}z"


def _text(line: Line) -> str:
    anchor = ' text-anchor="middle"' if line.centred else ""
    place = f'x="{line.x:g}" y="{line.baseline:g}" font-size="{line.size:g}"'
    return f"<text {place}{anchor}>{escape(line.text)}</text>"
