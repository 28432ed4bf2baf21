"""The QR symbol of a label: its modules, and how large it has to be at each level."""

import qrcode
from qrcode.exceptions import DataOverflowError
from qrcode.util import MODE_ALPHA_NUM
from qrcode.util import QRData

from server.core.codes import labels
from server.core.printing.face import ANY_CODE
from server.core.printing.face import Face
from server.core.printing.face import face_of
from server.core.printing.layout import Layout

_LEVELS = {
    "H": qrcode.constants.ERROR_CORRECT_H,
    "Q": qrcode.constants.ERROR_CORRECT_Q,
    "M": qrcode.constants.ERROR_CORRECT_M,
    "L": qrcode.constants.ERROR_CORRECT_L,
}


def face_for(layout: Layout, base: str, distance_cm: int) -> Face:
    """Returns the face of the labels that belong to `base`."""
    return face_of(layout, versions(labels.address(ANY_CODE, base)), base, distance_cm)


def versions(text: str) -> dict[str, int]:
    """Returns by level the smallest version that holds the text; one that none does is left out."""
    by_level = {}
    for level in _LEVELS:
        try:
            by_level[level] = _symbol(text, level, made=False).best_fit()
        except DataOverflowError:
            continue
    return by_level


def matrix(text: str, level: str = "Q") -> list[list[bool]]:
    """Returns the modules of the smallest QR symbol in alphanumeric mode, without its margin."""
    modules: list[list[bool]] = _symbol(text, level).get_matrix()
    return modules


def _symbol(text: str, level: str, made: bool = True) -> qrcode.QRCode:
    symbol = qrcode.QRCode(error_correction=_LEVELS[level], border=0)
    symbol.add_data(QRData(text, mode=MODE_ALPHA_NUM))
    if made:
        symbol.make(fit=True)
    return symbol
