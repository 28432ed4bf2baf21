"""A slip in ESC/POS, for receipt printers."""

from escpos.printer import Dummy

from server.slips.slip import Slip

_DOTS_A_MODULE = 6
_LEVEL_M = 1
_FEED = 4  # lines, until the text is past the knife


def bytes_of(slip: Slip) -> bytes:
    """Returns one receipt, cut at its end; its symbol is drawn by the printer itself."""
    paper = Dummy()
    paper.hw("INIT")
    if slip.shop:
        paper.textln(slip.shop)
    paper.set(align="left", double_height=True, double_width=True)
    paper.textln(slip.heading)
    if slip.shown:
        paper.textln(slip.shown)
    paper.set(align="left", normal_textsize=True)
    if slip.address:
        paper.qr(slip.address, ec=_LEVEL_M, size=_DOTS_A_MODULE, native=True)
    for line in slip.lines:
        paper.textln(line)
    paper.ln(_FEED)
    paper.cut(feed=False)
    made: bytes = paper.output
    return made
