"""The QR symbol of a label: its text, and its modules.

Level Q because labels get dirty; the text in capitals throughout, which makes the symbol small.
"""

import qrcode
from qrcode.util import MODE_ALPHA_NUM
from qrcode.util import QRData

QUIET_MODULES = 4  # of margin on every side, ISO/IEC 18004


def address(code: str, base: str) -> str:
    """Returns the text of a label's QR: upper case throughout, which makes the symbol small."""
    return f"{base}/U/{code}".upper()


def matrix(text: str) -> list[list[bool]]:
    """Returns the modules of a QR symbol in alphanumeric mode, level Q, without its margin."""
    symbol = qrcode.QRCode(error_correction=qrcode.constants.ERROR_CORRECT_Q, border=0)
    symbol.add_data(QRData(text, mode=MODE_ALPHA_NUM))
    symbol.make(fit=True)
    modules: list[list[bool]] = symbol.get_matrix()
    return modules
