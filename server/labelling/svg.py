"""Writes one page of labels as SVG, at its size on paper."""

from xml.sax.saxutils import escape  # nosec B406 # it writes, and reads nothing

from server.core.printing.sheet import Box
from server.core.printing.sheet import Line
from server.labelling.sheet import Page
from server.words.spoken import text

_FACE = "ui-monospace, 'DejaVu Sans Mono', 'Courier New', monospace"


def draw(page: Page) -> bytes:
    """Returns the file."""
    width, height = page.layout.page_width, page.layout.page_height
    marks = "".join(_box(box) for box in page.boxes)
    texts = "\n".join(_text(line) for line in page.lines)
    dot_mm = 25.4 / page.layout.dpi
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{width * dot_mm:.4f}mm" '
        f'height="{height * dot_mm:.4f}mm" viewBox="0 0 {width} {height}">\n'
        f'<rect width="100%" height="100%" fill="#fff"/>\n'
        f'<path fill="#000" shape-rendering="crispEdges" d="{marks}"/>\n'
        f'<g fill="#000" font-family="{_FACE}" font-weight="700">\n{texts}\n</g>\n</svg>\n'
    ).encode()


def _box(box: Box) -> str:
    return f"M{box.x} {box.y}h{box.width}v{box.height}h-{box.width}z"


def _text(line: Line) -> str:
    anchor = ' text-anchor="middle"' if line.centred else ""
    x, y, size, pitch = line.x / 100, line.y / 100, line.size / 100, line.pitch / 100
    # Each letter where it stands: programs that draw the file differ on the middle of spaced letters.
    last = len(line.text) - 1
    along = " ".join(f"{x + (n - last / 2) * pitch:g}" for n in range(last + 1)) if pitch else f"{x:g}"
    turn = f' transform="rotate(-90 {x:g} {y:g})"' if line.turned else ""
    place = f'x="{along}" y="{y:g}" font-size="{size:g}"'
    return f"<text {place}{anchor}{turn}>{escape(text(line.text))}</text>"
