"""The QR symbol of a label: its text, its modules, and which level and size suit the room there is.

Sources: ISO/IEC 18004 for the levels, the smallest version and the margin of 4 modules; qrcode.com
(howto/cell.html, of the symbol's inventor) for 4 printer dots a module at least.
"""

from typing import NamedTuple

import qrcode
from qrcode.exceptions import DataOverflowError
from qrcode.util import MODE_ALPHA_NUM
from qrcode.util import QRData

QUIET_MODULES = 4  # of margin on every side
LEAST_DOTS = 4  # a module
LEVELS = {  # best first; how much of a symbol may be covered, about, in percent
    "H": 30,
    "Q": 25,
    "M": 15,
    "L": 7,
}
_LEVELS = {
    "H": qrcode.constants.ERROR_CORRECT_H,
    "Q": qrcode.constants.ERROR_CORRECT_Q,
    "M": qrcode.constants.ERROR_CORRECT_M,
    "L": qrcode.constants.ERROR_CORRECT_L,
}


class Choice(NamedTuple):
    """How a symbol is drawn: its level, its version, and how many dots wide a module is."""

    level: str
    version: int
    dots: int

    @property
    def across(self) -> int:
        """How many dots the symbol takes with its margin."""
        return modules_across(self.version) * self.dots


def address(code: str, base: str) -> str:
    """Returns the text of a label's QR: upper case throughout, which makes the symbol small."""
    return f"{base}/U/{code}".upper()


def matrix(text: str, level: str = "Q") -> list[list[bool]]:
    """Returns the modules of the smallest QR symbol in alphanumeric mode, without its margin."""
    modules: list[list[bool]] = _symbol(text, level).get_matrix()
    return modules


def modules_across(version: int) -> int:
    """Returns the modules of a symbol's side with the margin on both ends."""
    return 17 + 4 * version + 2 * QUIET_MODULES


def choices(text: str, room: int) -> list[Choice]:
    """Returns how the text can be drawn in a square of `room` dots, the best level first."""
    found = []
    for level in LEVELS:
        try:
            version = _symbol(text, level, made=False).best_fit()
        except DataOverflowError:
            continue
        dots = room // modules_across(version)
        if dots:
            found.append(Choice(level, version, dots))
    return found


def choose(found: list[Choice], wanted: int) -> Choice | None:
    """Returns the best level with modules of `wanted` dots; where none has, the largest modules."""
    if not found:
        return None
    large = [choice for choice in found if choice.dots >= wanted]
    return large[0] if large else max(found, key=lambda choice: choice.dots)


def _symbol(text: str, level: str, made: bool = True) -> qrcode.QRCode:
    symbol = qrcode.QRCode(error_correction=_LEVELS[level], border=0)
    symbol.add_data(QRData(text, mode=MODE_ALPHA_NUM))
    if made:
        symbol.make(fit=True)
    return symbol
