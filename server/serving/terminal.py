"""What a start of the server prints: where it is, and how the first phone gets in."""

from server.phones.pairing import qr_matrix

_HALVES = {(False, False): "█", (False, True): "▀", (True, False): "▄", (True, True): " "}
_MARGIN = 2  # quiet zone in modules; terminals have a ground of their own around it


def qr_lines(link: str) -> list[str]:
    """Returns a QR symbol in half blocks, two rows a line, light modules drawn.

    Drawn light on a dark terminal it is an ordinary symbol; on a light one it is inverted, which
    phones read as well.
    """
    matrix = qr_matrix(link)
    width = len(matrix) + 2 * _MARGIN
    empty = [False] * width
    rows = [empty] * _MARGIN
    rows += [[False] * _MARGIN + row + [False] * _MARGIN for row in matrix]
    rows += [empty] * (_MARGIN + len(rows) % 2)
    rows += [empty] * (len(rows) % 2)
    return [
        "".join(_HALVES[upper, lower] for upper, lower in zip(rows[at], rows[at + 1], strict=True))
        for at in range(0, len(rows), 2)
    ]
