"""A slip in ZPL II, for label printers of 203 dots an inch (8 dots a millimetre) and stock 50 mm wide."""

import textwrap

from server.slips.slip import Slip

_WIDTH, _LEFT = 400, 20  # dots
_BIG, _SMALL = 44, 28  # heights of letters
_MAGNIFICATION = 4
_SYMBOL = 33 * _MAGNIFICATION  # version 4 at most: 33 modules
_LINE = 34
_CHARACTERS = 26  # of a small line


def bytes_of(slip: Slip) -> bytes:
    """Returns one label; what a printer could take for a command is sent in hex."""
    y = 20
    # ^BY first: the symbol sinks by the height that an earlier label left there. ^CI28: UTF-8 follows.
    made = ["^XA", "^CI28", "^BY2,3,10", f"^PW{_WIDTH}"]
    for text in textwrap.wrap(slip.shop, _CHARACTERS):
        made.append(_text(y, _SMALL, text))
        y += _LINE
    for text in textwrap.wrap(slip.heading, 16):
        made.append(_text(y, _BIG, text))
        y += _BIG + 8
    if slip.shown:
        made.append(_text(y, _BIG, slip.shown))
        y += _BIG + 12
    if slip.address:
        # M: the level of error correction; A: the printer finds the mode by itself.
        made.append(f"^FO{_LEFT},{y}^BQN,2,{_MAGNIFICATION}^FH_^FDMA,{_escaped(slip.address)}^FS")
        y += _SYMBOL + 24
    for line in slip.lines:
        for text in textwrap.wrap(line, _CHARACTERS):
            made.append(_text(y, _SMALL, text))
            y += _LINE
    return "".join([made[0], f"^LL{y + 20}", *made[1:], "^XZ\n"]).encode("ascii")


def _text(y: int, height: int, text: str) -> str:
    return f"^FO{_LEFT},{y}^A0N,{height},{height}^FH_^FD{_escaped(text)}^FS"


def _escaped(text: str) -> str:
    """Returns a text for ^FH: what is not plain, or begins a command, as _ and two hex digits."""
    return "".join(
        chr(byte) if 32 <= byte < 127 and chr(byte) not in "^~_\\" else f"_{byte:02X}"
        for byte in text.encode()
    )
