"""What every drawn picture needs: light, grain, dirt, soft shadows, and the way a phone sees it."""

import io
import math
from collections.abc import Callable

from PIL import Image
from PIL import ImageChops
from PIL import ImageDraw
from PIL import ImageFilter

from demo_db.dice import Dice

Colour = tuple[int, int, int]

WIDTH, HEIGHT = 1024, 768
SCALE = 1.5  # drawn larger and scaled down at the end: that alone softens edges like a lens
CANVAS = (round(WIDTH * SCALE), round(HEIGHT * SCALE))
_QUALITY = 74
_BROWN: Colour = (112, 92, 68)


def shade(colour: Colour, light: float) -> Colour:
    """Return a colour under more or less light."""
    red, green, blue = (max(0, min(255, round(part * light))) for part in colour)
    return red, green, blue


def mix(one: Colour, other: Colour, share: float) -> Colour:
    """Return a colour between two; `share` is how much of the other."""
    red, green, blue = (round(a + (b - a) * share) for a, b in zip(one, other, strict=True))
    return red, green, blue


def rows(size: tuple[int, int], colour_at: Callable[[float], Colour]) -> Image.Image:
    """Return a surface whose colour changes from top (0) to bottom (1)."""
    column = Image.new("RGB", (1, size[1]))
    for y in range(size[1]):
        column.putpixel((0, y), colour_at(y / size[1]))
    return column.resize(size, Image.Resampling.NEAREST)


def noise(dice: Dice, size: tuple[int, int], coarse: int = 1) -> Image.Image:
    """Return grey noise around 128; `coarse` is how many pixels a grain is wide."""
    small = (-(-size[0] // coarse), -(-size[1] // coarse))
    grain = Image.frombytes("L", small, dice.bytes(small[0] * small[1]))
    return grain.resize(size, Image.Resampling.BILINEAR) if coarse > 1 else grain


def textured(image: Image.Image, dice: Dice, strength: float, coarse: int = 1) -> Image.Image:
    """Return the image with noise laid over it; `strength` is its largest share of full light."""
    grain = noise(dice, image.size, coarse).point(lambda v: round(128 + (v - 128) * strength * 2))
    return ImageChops.add(image, Image.merge("RGB", [grain] * 3), 1, -128)


def soft(image: Image.Image, box: tuple[float, ...], colour: Colour, blur: float, alpha: float) -> None:
    """Lay a soft ellipse on the image, a shadow or a shine."""
    margin = round(blur * 3)
    left, top = math.floor(box[0]) - margin, math.floor(box[1]) - margin
    size = (math.ceil(box[2]) + margin - left, math.ceil(box[3]) + margin - top)
    step = 4 if blur >= 8 else 1  # a blur hides the coarser pixels
    mask = Image.new("L", (size[0] // step + 1, size[1] // step + 1))
    inner = [(box[0] - left) / step, (box[1] - top) / step, (box[2] - left) / step, (box[3] - top) / step]
    ImageDraw.Draw(mask).ellipse(inner, fill=round(255 * alpha))
    mask = mask.filter(ImageFilter.GaussianBlur(blur / step)).resize(size, Image.Resampling.BILINEAR)
    image.paste(colour, (left, top, left + size[0], top + size[1]), mask)


def dirt(image: Image.Image, dice: Dice, amount: float, colour: Colour = _BROWN) -> None:
    """Splash dirt over the image, a film and specks, more of both towards the bottom."""
    step = 3
    size = (image.width // step, image.height // step)
    mask = noise(dice, size, 40).point(lambda v: round(max(0, v - 70) * 0.55 * amount))
    draw = ImageDraw.Draw(mask)
    for _ in range(round(700 * amount)):
        x, y = dice.between(0, size[0]), size[1] * dice.between(0, 1) ** 0.5
        radius = 0.4 + 2.4 * dice.between(0, 1) ** 6
        flat = radius * dice.between(0.6, 1.5)
        draw.ellipse([x - radius, y - flat, x + radius, y + flat], fill=dice.whole(30, 140))
    image.paste(colour, (0, 0), mask.resize(image.size, Image.Resampling.BILINEAR))


def mud(image: Image.Image, dice: Dice, at: tuple[float, float], radius: float) -> None:
    """Throw mud at a place: ragged, thick in the middle, splashes around it."""
    step, reach = 2, round(radius * 1.7)
    size = (2 * reach // step, 2 * reach // step)
    near = Image.radial_gradient("L").resize(size).point(lambda v: round(200 * max(0.0, 1 - v / 160)))
    lumps = noise(dice, size, 15).point(lambda v: v // 2)  # alone never enough, so no edge shows
    mask = ImageChops.add(near, lumps).point(lambda v: max(0, min(235, (v - 128) * 9)))
    mask = mask.filter(ImageFilter.GaussianBlur(1.5)).resize((size[0] * step, size[1] * step))
    mass = textured(Image.new("RGB", mask.size, (104, 84, 60)), dice, 0.09, 9)
    corner = (round(at[0]) - reach, round(at[1]) - reach)
    image.paste(mass, corner, mask)


def scratch(image: Image.Image, dice: Dice, start: tuple[float, float], length: float) -> None:
    """Draw a scratch: a few pale lines that nearly follow each other, each with a dark edge."""
    draw = ImageDraw.Draw(image, "RGBA")
    slope = dice.between(-0.35, 0.35)
    for _ in range(dice.whole(2, 3)):
        x, y = start[0] + dice.between(-12, 12), start[1] + dice.between(-9, 9)
        points = []
        for part in range(9):
            along = length * part / 8
            points.append((x + along, y + along * slope + dice.between(-2, 2)))
        draw.line([(px, py + 2) for px, py in points], fill=(0, 0, 0, 90), width=2)
        draw.line(points, fill=(225, 222, 214, 170), width=2)


def bowed(image: Image.Image, drop: float, middle: float = 0.5) -> Image.Image:
    """Return the image with its ends lowered by up to `drop` pixels, as a curved bumper looks."""
    bent = image.copy()
    wide = 8
    for left in range(0, image.width, wide):
        down = round(drop * (2 * (left / image.width - middle)) ** 2)
        bent.paste(image.crop((left, 0, left + wide, image.height - down)), (left, down))
    return bent


def photographed(
    image: Image.Image,
    dice: Dice,
    *,
    turn: float = 2.5,
    grain: float = 0.022,
    light_at: Callable[[float], float] = lambda x: 1.0,
) -> bytes:
    """Return the JPEG that a hand-held phone would have made of the scene, without added data.

    `light_at` is the light from left (0) to right (1), 1 at the brightest; `grain` is how rough all
    looks.
    """
    angle = math.radians(dice.between(-turn, turn))
    scale = SCALE * dice.between(0.9, 0.925)
    cosine, sine = math.cos(angle) * scale, math.sin(angle) * scale
    middle_x = image.width / 2 + dice.between(-18, 18)
    middle_y = image.height / 2 + dice.between(-14, 14)
    seen = image.transform(
        (WIDTH, HEIGHT),
        Image.Transform.AFFINE,
        (
            cosine, -sine, middle_x - cosine * WIDTH / 2 + sine * HEIGHT / 2,
            sine, cosine, middle_y - sine * WIDTH / 2 - cosine * HEIGHT / 2,
        ),
        Image.Resampling.BILINEAR,
    )  # fmt: skip
    seen = ImageChops.multiply(seen, _light(light_at))
    file = io.BytesIO()
    textured(seen, dice, grain, 2).save(file, "JPEG", quality=_QUALITY)
    return file.getvalue()


def _light(light_at: Callable[[float], float]) -> Image.Image:
    """Return the light over a picture; a small lens makes the corners a little darker."""
    small = Image.new("L", (32, 24))
    for x in range(32):
        across = max(0.0, min(1.0, light_at(x / 31)))
        for y in range(24):
            away = ((x - 15.5) / 16) ** 2 + ((y - 11.5) / 12) ** 2
            small.putpixel((x, y), round((255 - 26 * away) * across))
    return Image.merge("RGB", [small.resize((WIDTH, HEIGHT), Image.Resampling.BILINEAR)] * 3)
