"""How many camera pixels a module of our labels needs: what the warning about small labels rests on.

Draws symbols as a camera would see them (turned, slightly tilted, between pixels, blurred, noisy) at so
many pixels a module and counts how many an independent decoder reads.

    python -m tests.bench.label_pixels
"""

import random

import numpy
import zxingcpp
from PIL import Image
from PIL import ImageFilter

from server.core.codes import labels
from server.core.codes.labels import address
from server.core.printing.face import QUIET_MODULES
from server.labelling.symbol import matrix

FINE = 12  # dots a module before it is made small
LOOKS = 60


def photographed(modules: list[list[bool]], pixels: float, dice: random.Random) -> Image.Image:
    """Returns the symbol as a camera sees it: any turn, tilted up to 15 degrees, soft, noisy."""
    dark = numpy.pad(numpy.array(modules), QUIET_MODULES)
    picture = Image.fromarray(
        numpy.where(numpy.kron(dark, numpy.ones((FINE, FINE))), 40, 215).astype("uint8")
    )
    tilt = dice.uniform(0.966, 1)
    size = [round(side * pixels / FINE) for side in (picture.width, picture.height * tilt)]
    ground = Image.new("L", (picture.width * 2, picture.height * 2), 215)
    ground.paste(picture, (picture.width // 2, picture.height // 2))
    ground = ground.rotate(dice.uniform(0, 360), Image.Resampling.BICUBIC, fillcolor=215)
    small = ground.resize((size[0] * 2, size[1] * 2), Image.Resampling.BOX)
    small = small.filter(ImageFilter.GaussianBlur(0.7))
    grain = numpy.random.default_rng(dice.randrange(1 << 30)).normal(0, 5, (small.height, small.width))
    return Image.fromarray(numpy.clip(numpy.asarray(small) + grain, 0, 255).astype("uint8"))


def read_rate(pixels: float, looks: int, base: str, seed: int = 18004) -> float:
    """Returns the share of looks at which the symbol is read, and read right."""
    dice = random.Random(seed)
    codes = labels.codes_from([dice.randrange(256) for _ in range(looks * 40)], looks)
    texts = [address(code, base) for code in codes]
    seen = [(text, zxingcpp.read_barcode(photographed(matrix(text), pixels, dice))) for text in texts]
    return sum(symbol is not None and symbol.text == text for text, symbol in seen) / looks


def main() -> None:
    """Prints the table."""
    for base in ("http://localhost:8765", "https://swaptrail.workshop.lan:48765"):
        print(base)
        for tenths in range(14, 41, 2):
            share = read_rate(tenths / 10, LOOKS, base)
            print(f"  {tenths / 10:.1f} pixels a module: {share:6.1%} read")


if __name__ == "__main__":
    main()
