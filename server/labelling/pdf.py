"""Writes sheets of labels as one PDF: boxes and text only, in a face every reader has.

Source: PDF 1.4 (Adobe, third edition), sections 3.4 (file structure) and 5.5.1 (standard fonts).
"""

import zlib

from server.labelling.sheet import PAGE_HEIGHT
from server.labelling.sheet import PAGE_WIDTH
from server.labelling.sheet import Line
from server.labelling.sheet import Page

POINTS_A_DOT = 72 / 300
_CHARACTER_WIDTH = 0.6  # of the size; Courier's for every character


def draw(pages: list[Page]) -> bytes:
    """Returns the file."""
    first = 4  # object numbers: 1 catalogue, 2 page tree, 3 font, then page and content in turn
    kids = " ".join(f"{first + 2 * index} 0 R" for index in range(len(pages)))
    size = f"{PAGE_WIDTH * POINTS_A_DOT:.3f} {PAGE_HEIGHT * POINTS_A_DOT:.3f}"
    objects = [
        b"<< /Type /Catalog /Pages 2 0 R >>",
        f"<< /Type /Pages /Kids [{kids}] /Count {len(pages)} /MediaBox [0 0 {size}] >>".encode(),
        b"<< /Type /Font /Subtype /Type1 /BaseFont /Courier-Bold /Encoding /WinAnsiEncoding >>",
    ]
    for index, page in enumerate(pages):
        packed = zlib.compress(content(page), 9)
        objects.append(
            f"<< /Type /Page /Parent 2 0 R /Resources << /Font << /F 3 0 R >> >> "
            f"/Contents {first + 2 * index + 1} 0 R >>".encode()
        )
        head = f"<< /Length {len(packed)} /Filter /FlateDecode >>\nstream\n".encode()
        objects.append(head + packed + b"\nendstream")
    return _file(objects)


def content(page: Page) -> bytes:
    """Returns the drawing of one page, before it is compressed."""
    # One change of coordinates: from here on the unit is a dot and y grows upwards from the foot.
    parts = [f"{POINTS_A_DOT:g} 0 0 {POINTS_A_DOT:g} 0 0 cm 0 g"]
    for box in page.boxes:
        foot = PAGE_HEIGHT - box.y - box.height
        parts.append(f"{box.x:.3f} {foot:.3f} {box.width:.3f} {box.height:.3f} re")
    parts.append("f")
    parts += [_text(line) for line in page.lines]
    return "\n".join(parts).encode("cp1252", "replace")


def _text(line: Line) -> str:
    width = len(line.text) * line.size * _CHARACTER_WIDTH
    x = line.x - width / 2 if line.centred else line.x
    escaped = line.text.replace("\\", "\\\\").replace("(", "\\(").replace(")", "\\)")
    baseline = PAGE_HEIGHT - line.baseline
    return f"BT /F {line.size:g} Tf {x:.3f} {baseline:.3f} Td ({escaped}) Tj ET"


def _file(objects: list[bytes]) -> bytes:
    data = bytearray(b"%PDF-1.4\n%\xe2\xe3\xcf\xd3\n")
    places = []
    for number, body in enumerate(objects, 1):
        places.append(len(data))
        data += f"{number} 0 obj\n".encode() + body + b"\nendobj\n"
    table = len(data)
    data += f"xref\n0 {len(objects) + 1}\n0000000000 65535 f \n".encode()
    for place in places:
        data += f"{place:010d} 00000 n \n".encode()
    data += f"trailer\n<< /Size {len(objects) + 1} /Root 1 0 R >>\n".encode()
    data += f"startxref\n{table}\n%%EOF\n".encode()
    return bytes(data)
