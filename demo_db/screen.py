"""The picture of the control unit's self-test: a plain list on a lit screen, our own drawing."""

from collections.abc import Sequence

from PIL import Image
from PIL import ImageDraw
from PIL import ImageFont

from demo_db.dice import Dice
from demo_db.paint import CANVAS
from demo_db.paint import photographed
from demo_db.paint import rows
from demo_db.paint import shade
from demo_db.paint import soft

_W, _H = CANVAS
_SIZE = (1080, 800)
_LIT = (206, 219, 208)
_INK = (26, 34, 30)


def self_test(lines: Sequence[tuple[str, str]], heading: str, *, seed: str) -> bytes:
    """Return a picture of the screen; `lines` are (position, code), the code "" where all is well."""
    dice = Dice("screen", seed, heading)
    scene = rows(CANVAS, lambda y: shade((52, 50, 54), 1.1 - 0.5 * y))
    soft(scene, (150, 120, _W - 130, _H - 60), (0, 0, 0), 44, 0.7)
    draw = ImageDraw.Draw(scene)
    draw.rounded_rectangle([130, 90, _W - 130, _H - 90], 70, fill=(40, 42, 46), outline=(70, 73, 78), width=8)
    draw.rounded_rectangle([190, 150, _W - 190, _H - 150], 18, fill=(12, 12, 13))
    _lay(scene, _drawn(lines, heading), dice.between(0, 14))
    glare = [(880, 160), (1060, 160), (740, _H - 160), (560, _H - 160)]
    ImageDraw.Draw(scene, "RGBA").polygon(glare, fill=(255, 255, 255, 26))
    return photographed(scene, dice, turn=4, grain=0.03)


def _drawn(lines: Sequence[tuple[str, str]], heading: str) -> Image.Image:
    """Return the screen as it would look straight on."""
    screen = rows(_SIZE, lambda y: shade(_LIT, 1.06 - 0.12 * y))
    draw = ImageDraw.Draw(screen)
    draw.rectangle([0, 0, _SIZE[0], 92], fill=_INK)
    draw.text((34, 46), "PARKING AID · SELF-TEST", fill=_LIT, font=ImageFont.load_default(44), anchor="lm")
    step = min(112, 590 // max(1, len(lines)))
    font = ImageFont.load_default(min(46, round(step * 0.62)))
    for index, (position, code) in enumerate(lines):
        y = 128 + step * index + step / 2
        if code:
            draw.rectangle([18, y - step * 0.44, _SIZE[0] - 18, y + step * 0.44], fill=_INK)
        ink = _LIT if code else _INK
        draw.text((44, y), f"{index + 1}  {position}", fill=ink, font=font, anchor="lm")
        draw.text((_SIZE[0] - 44, y), code or "ok", fill=ink, font=font, anchor="rm")
    draw.line([(18, 742), (_SIZE[0] - 18, 742)], fill=_INK, width=3)
    draw.text((34, 771), heading, fill=_INK, font=ImageFont.load_default(34), anchor="lm")
    return screen


def _lay(scene: Image.Image, screen: Image.Image, lean: float) -> None:
    """Lay the screen into the scene as seen a little from the side."""
    size = (_W - 444, _H - 356)
    quad = (-lean, 0, 0, _SIZE[1], _SIZE[0], _SIZE[1] + 4, _SIZE[0] + 4, -4)
    seen = screen.transform(size, Image.Transform.QUAD, quad, Image.Resampling.BILINEAR)
    scene.paste(seen, (222, 178))  # what lies beside the screen is as black as its frame
