"""Writes one page of labels as SVG, at its size on paper."""

from xml.sax.saxutils import escape

from server.labelling.sheet import Box
from server.labelling.sheet import Line
from server.labelling.sheet import Page

_FACE = "ui-monospace, 'DejaVu Sans Mono', 'Courier New', monospace"


def draw(page: Page) -> bytes:
    """Returns the file."""
    width, height = page.layout.page_width, page.layout.page_height
    marks = "".join(_box(box) for box in page.boxes)
    texts = "\n".join(_text(line) for line in page.lines)
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{width * page.layout.dot_mm:.4f}mm" '
        f'height="{height * page.layout.dot_mm:.4f}mm" viewBox="0 0 {width} {height}">\n'
        f'<rect width="100%" height="100%" fill="#fff"/>\n'
        f'<path fill="#000" shape-rendering="crispEdges" d="{marks}"/>\n'
        f'<g fill="#000" font-family="{_FACE}" font-weight="700">\n{texts}\n</g>\n</svg>\n'
    ).encode()


def _box(box: Box) -> str:
    return f"M{box.x} {box.y}h{box.width}v{box.height}h-{box.width}z"


def _text(line: Line) -> str:
    anchor = ' text-anchor="middle"' if line.centred else ""
    turn = f' transform="rotate(-90 {line.x:g} {line.y:g})"' if line.turned else ""
    place = f'x="{line.x:g}" y="{line.y:g}" font-size="{line.size:g}"'
    return f"<text {place}{anchor}{turn}>{escape(line.text)}</text>"
