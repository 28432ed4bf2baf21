"""The pictures of the demo, drawn by us: a sensor in its bumper, a pulled sensor, a plug.

They stand in for photographs: near, a little crooked, with dirt and scratches, each one different
and each the same at every build. `screen.py` draws the one of the control unit.
"""

import math
from functools import cache
from typing import NamedTuple

from PIL import Image
from PIL import ImageDraw
from PIL import ImageFont

from demo_db.dice import Dice
from demo_db.paint import CANVAS
from demo_db.paint import Colour
from demo_db.paint import bowed
from demo_db.paint import dirt
from demo_db.paint import mix
from demo_db.paint import mud
from demo_db.paint import photographed
from demo_db.paint import rows
from demo_db.paint import scratch
from demo_db.paint import shade
from demo_db.paint import soft
from server.core.codes import labels
from server.core.codes.labels import address
from server.labelling.symbol import matrix

_W, _H = CANVAS
_SKY: Colour = (225, 232, 240)
_BLACK: Colour = (22, 23, 25)
_GROUND: Colour = (104, 102, 99)


class Finish(NamedTuple):
    """How a vehicle's bumper looks: its paint, the colour of the body above it, how dirty it is."""

    bumper: Colour
    body: Colour
    painted: bool
    dirt: float


def bumper(finish: Finish, position: str, *, seed: str, dirty: bool = False) -> bytes:
    """Return a picture of the sensor at a position such as `rear-left-outer`, in its bumper."""
    dice = Dice("bumper", seed, position)
    edge, side, place = position.split("-")
    outward = -1 if (side == "left") == (edge == "rear") else 1  # in front the vehicle's left is on the right
    scene = _surfaces(finish).copy()
    if place == "outer":
        _corner(scene, edge, outward)
    else:
        _plate(scene, outward)
    scene = bowed(scene, 46 if place == "outer" else 16, 0.5 - 0.32 * outward)
    x, y = _W / 2 + dice.between(-70, 70) - 60 * outward, _H * 0.47 + dice.between(-30, 30)
    sensor(scene, (x, y), dice.between(118, 132), finish.bumper)
    for _ in range(dice.whole(0, 2)):
        scratch(scene, dice, (dice.between(200, _W - 500), dice.between(330, 700)), dice.between(120, 320))
    dirt(scene, dice, finish.dirt)
    if dirty:
        mud(scene, dice, (x + 20, y + 30), 150)
    falling = 0.8 if place == "outer" else 0.25  # a bumper turns away from the light at its end
    return photographed(
        scene,
        dice,
        grain=0.022 if finish.painted else 0.05,
        light_at=lambda x: 1.0 - falling * max(0.0, (x - 0.5) * outward + 0.12) ** 1.4,
    )


def sensor(scene: Image.Image, at: tuple[float, float], radius: float, colour: Colour) -> None:
    """Draw the face of a sensor, flush in its bore."""
    x, y = at
    box = _around(x, y, radius)
    soft(scene, _around(x, y + 5, radius + 9), (0, 0, 0), 7, 0.55)
    draw = ImageDraw.Draw(scene)
    draw.ellipse(_around(x, y, radius + 4), fill=(16, 16, 18))
    draw.arc(_around(x, y, radius + 4), 20, 160, fill=mix((16, 16, 18), _SKY, 0.35), width=3)
    size = round(radius * 2)
    face = rows((size, size), lambda t: shade(mix(colour, _SKY, 0.16 * (1 - t) ** 2), 1.02 - 0.3 * t))
    mask = Image.new("L", (size * 2, size * 2))
    ImageDraw.Draw(mask).ellipse([4, 4, size * 2 - 5, size * 2 - 5], fill=255)
    scene.paste(face, (round(box[0]), round(box[1])), mask.resize((size, size), Image.Resampling.BICUBIC))
    ring = _around(x, y, radius * 0.66)
    draw.ellipse(ring, outline=shade(colour, 0.62), width=3)
    draw.arc(_around(x, y + 2, radius * 0.66), 25, 155, fill=mix(colour, _SKY, 0.45), width=3)
    draw.arc(_around(x, y, radius - 5), 195, 345, fill=mix(colour, _SKY, 0.5), width=3)
    shine = (x - radius * 0.52, y - radius * 0.62, x + radius * 0.1, y - radius * 0.28)
    soft(scene, shine, (255, 255, 255), 14, 0.34)


def pulled(finish: Finish, code: str, base: str, *, seed: str) -> bytes:
    """Return a picture of a pulled sensor on the bench, its label with code and QR up."""
    dice = Dice("pulled", seed, code)
    wood: Colour = (176, 148, 112)
    scene = rows(CANVAS, lambda y: shade(wood, 1.06 - 0.3 * y))
    draw = ImageDraw.Draw(scene, "RGBA")
    for _ in range(60):  # the grain of the board
        y, dark = dice.between(0, _H), dice.whole(8, 34)
        draw.line([(0, y), (_W / 2, y + dice.between(-9, 9)), (_W, y)], fill=(86, 62, 36, dark), width=3)
    _housing(scene, finish)
    sticker = _sticker(code, base).rotate(dice.between(-4, 4), Image.Resampling.BICUBIC, expand=True)
    scene.paste(sticker, (620, 372), sticker)
    dirt(scene, dice, 0.12)
    return photographed(scene, dice, turn=3.5, grain=0.04)


def plug(*, seed: str) -> bytes:
    """Return a picture of a sensor's plug held in front of the bumper: three pins, clean and straight."""
    dice = Dice("plug", seed)
    scene = rows(CANVAS, lambda y: shade((58, 60, 64), 1.15 - 0.6 * y))
    draw = ImageDraw.Draw(scene)
    for index, colour in enumerate(((38, 38, 40), (128, 84, 48), (196, 186, 160))):
        at = 520 + 62 * index
        points = [(_W * t / 30, at + 90 * math.sin(0.08 * t + 0.3 * index)) for t in range(20)]
        draw.line([(x, y + 9) for x, y in points], fill=(20, 20, 22), width=46, joint="curve")
        draw.line(points, fill=colour, width=38, joint="curve")
        draw.line([(x, y - 9) for x, y in points], fill=mix(colour, _SKY, 0.35), width=7, joint="curve")
    soft(scene, (700, 480, 1330, 960), (0, 0, 0), 40, 0.6)
    draw.rounded_rectangle([690, 360, 1290, 830], 40, fill=(34, 35, 38))
    draw.rounded_rectangle([690, 360, 1290, 420], 30, fill=(58, 60, 64))
    draw.rounded_rectangle([820, 306, 1160, 420], 20, fill=(96, 66, 58))  # the lock
    draw.rectangle([860, 326, 1120, 344], fill=(138, 100, 88))
    draw.rounded_rectangle([760, 470, 1220, 760], 26, fill=(12, 12, 14))
    for index in range(3):
        left = 806 + 138 * index
        draw.rounded_rectangle([left, 532, left + 92, 700], 12, fill=(4, 4, 5), outline=(52, 54, 58), width=4)
        draw.rectangle([left + 34, 560, left + 58, 672], fill=(186, 158, 92))
        draw.rectangle([left + 34, 560, left + 41, 672], fill=(236, 216, 158))
    dirt(scene, dice, 0.25)
    soft(scene, (380, 60, 1100, 420), (255, 246, 226), 120, 0.3)  # a hand lamp
    return photographed(scene, dice, turn=5, grain=0.04)


@cache
def _surfaces(finish: Finish) -> Image.Image:
    """Return the back or front of a vehicle before anything is drawn on it."""
    return rows(CANVAS, lambda y: _surface(finish, y))


def _surface(finish: Finish, y: float) -> Colour:
    """Return what is seen at a height: body, gap, bumper with its crease, lower trim, ground."""
    if y < 0.15:
        return shade(mix(finish.body, _SKY, 0.25 * (1 - y / 0.15)), 0.8)
    if y < 0.165:
        return shade(finish.body, 0.16)
    if y < 0.80:
        t = (y - 0.165) / 0.635
        sky = 0.42 * math.exp(-(((t - 0.06) / 0.09) ** 2)) + 0.1 * (1 - t)
        light = 1.06 - 0.26 * t - (0.16 if t > 0.8 else 0.0) + 0.1 * math.exp(-(((t - 0.79) / 0.02) ** 2))
        return shade(mix(finish.bumper, _SKY, sky if finish.painted else sky * 0.45), light)
    if y < 0.9:
        return shade(_BLACK, 1.7 - 8 * (y - 0.8))
    return shade(_GROUND, 0.55 + 3.2 * (y - 0.9))


def _corner(scene: Image.Image, edge: str, outward: int) -> None:
    """Draw what an outer position has beside it: a reflector behind, a lamp in front, the wheel arch."""
    draw = ImageDraw.Draw(scene)
    end = _W if outward > 0 else 0
    draw.ellipse(_around(end + 150 * outward, _H * 0.98, 330), fill=(18, 18, 19))
    draw.arc(_around(end + 150 * outward, _H * 0.98, 344), 0, 360, fill=(70, 72, 75), width=14)
    middle = end - 300 * outward
    if edge == "rear":
        draw.rounded_rectangle([middle - 150, 735, middle + 150, 802], 16, fill=(70, 10, 12))
        draw.rounded_rectangle([middle - 144, 741, middle + 144, 796], 12, fill=(168, 26, 26))
        for x in range(-140, 144, 14):
            draw.line([(middle + x, 742), (middle + x, 795)], fill=(196, 52, 46), width=3)
        draw.line([(middle - 138, 748), (middle + 138, 748)], fill=(238, 150, 140), width=4)
        return
    draw.ellipse(_around(middle, 770, 92), fill=(24, 25, 27))
    draw.ellipse(_around(middle, 770, 72), fill=(150, 158, 166))
    draw.ellipse(_around(middle - 8, 764, 48), fill=(206, 214, 221))
    soft(scene, _around(middle - 22, 744, 16), (255, 255, 255), 8, 0.9)


def _plate(scene: Image.Image, outward: int) -> None:
    """Draw the end of the number plate that an inner position has beside it."""
    left, right = (-330, 250) if outward > 0 else (_W - 250, _W + 330)
    draw = ImageDraw.Draw(scene)
    draw.rounded_rectangle([left - 26, 300, right + 26, 575], 26, fill=shade(_BLACK, 0.8))
    draw.rounded_rectangle([left, 326, right, 549], 16, fill=(228, 226, 216))
    draw.rounded_rectangle([left + 10, 336, right - 10, 539], 12, outline=(48, 48, 48), width=5)
    anchor, at = ("rm", right - 40) if outward > 0 else ("lm", left + 40)
    draw.text((at, 440), "DEMO", fill=(38, 38, 40), font=ImageFont.load_default(150), anchor=anchor)


def _housing(scene: Image.Image, finish: Finish) -> None:
    """Draw a sensor lying on its back: round face to the left, body, catches, socket to the right."""
    soft(scene, (330, 420, 1270, 900), (40, 26, 12), 36, 0.55)
    draw = ImageDraw.Draw(scene)
    draw.rounded_rectangle([1040, 470, 1270, 730], 26, fill=(30, 31, 34))
    draw.rectangle([1180, 500, 1270, 700], fill=(10, 10, 11))
    for y in (545, 600, 655):
        draw.rectangle([1196, y - 7, 1256, y + 7], fill=(190, 164, 98))
    for y in (356, 806):
        draw.rounded_rectangle([640, y - 34, 850, y + 34], 18, fill=(46, 48, 52))
        draw.rectangle([690, y - 12, 800, y + 12], fill=(18, 18, 20))
    body = rows((620, 460), lambda t: shade((62, 65, 70), 1.25 - 1.05 * abs(t - 0.3)))
    scene.paste(body, (480, 352))
    paint = finish.bumper
    face = rows((150, 520), lambda t: shade(mix(paint, _SKY, 0.3 * (1 - t)), 1.1 - 0.9 * abs(t - 0.3)))
    scene.paste(shade(_BLACK, 0.7), (434, 322, 484, 842))
    scene.paste(face, (300, 322))
    draw.rectangle([300, 322, 312, 842], fill=shade(paint, 0.55))


def _sticker(code: str, base: str) -> Image.Image:
    """Return a label as the sheets print it: QR above, code below."""
    modules = matrix(address(code, base))
    symbol = Image.new("L", (len(modules), len(modules)), 255)
    for y, row in enumerate(modules):
        for x, dark in enumerate(row):
            symbol.putpixel((x, y), 24 if dark else 250)
    size = len(modules) * 9
    label = Image.new("RGBA", (size + 72, size + 136), (250, 249, 244, 255))
    label.paste(symbol.resize((size, size), Image.Resampling.NEAREST).convert("RGB"), (36, 36))
    draw = ImageDraw.Draw(label)
    at, font = (label.width / 2, size + 84), ImageFont.load_default(80)
    draw.text(at, labels.shown(code), fill=(20, 20, 22), font=font, anchor="mm")
    return label


def _around(x: float, y: float, radius: float) -> tuple[float, float, float, float]:
    return (x - radius, y - radius, x + radius, y + radius)
