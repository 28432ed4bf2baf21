"""Draws labels as light reaches a camera: rays on a bent label, lens, shutter, grain, tone curve, JPEG.

A second set beside `degraded_labels`, drawn by other means so that no scanner is tuned to one of the two:
light is linear until the tone curve, blur is a lens's disc or a shaking hand's path, glare is a lamp on
gloss, grease smears what is under it, a tear shows the body, and every picture was a JPEG. Each kind has four
severities, in the units of the thing itself. Kind, severity and number always give the same picture.
"""

import io
import math

import numpy
from PIL import Image
from PIL import ImageDraw
from scipy import ndimage

from server.core.printing.face import QUIET_MODULES as QUIET
from tests.static.drawn_labels import FRAME
from tests.static.drawn_labels import MODULE_MM
from tests.static.drawn_labels import Kind
from tests.static.drawn_labels import Picture
from tests.static.drawn_labels import Scene
from tests.static.drawn_labels import picture_of
from tests.static.drawn_labels import sets

SEVERITIES = 4
FOCAL = 1005.0  # pixels: 1280 of them for 65 degrees
CELLS = 12  # of the label's own drawing, a module
FINE = 2  # samples a side of a pixel
TEXT_MODULES = 6  # of paper below the symbol, with the code in letters
PAPER, INK, BODY, GREASE = 0.78, 0.035, 0.06, 0.22  # how much of the light comes back
WHITE = 1.1  # the light that just fills a pixel
BASES = ("http://workshop:8765", "https://parts.example.org:8443")


class LitScene(Scene):
    """A label on a body, the light on it, and the camera."""

    def __init__(self, seed: list[int]) -> None:
        """Hold a label of its own nearly straight before the camera in good light."""
        super().__init__(seed, BASES)
        self.pixels = self.random.uniform(3.9, 4.5)  # a module, seen straight
        self.spin = self.random.uniform(-math.pi, math.pi)
        self.lean = math.radians(self.random.uniform(0, 12))
        self.lean_way = self.random.uniform(-math.pi, math.pi)
        self.radius: float | None = None
        self.aside = 0.0
        self.middle = FRAME / 2 + self.random.uniform(-35, 35, 2)
        self.disc = 0.7
        self.shake = 0.0
        self.electrons = 3000.0
        self.contrast = 1.0
        self.glare = 0.0
        self.grease = 0.0
        self.torn = 0.0
        self.quality = int(self.random.integers(70, 88))

    def draw(self) -> Image.Image:
        """Return the camera's picture."""
        label, there = self._drawing()
        across, down, seen = self._rays()
        column = (across + self.side / 2 + QUIET) * CELLS
        row = (down + self.side / 2 + QUIET) * CELLS
        inside = seen & (column >= 0) & (row >= 0) & (column < label.shape[1]) & (row < label.shape[0])
        at = (
            numpy.clip(row, 0, label.shape[0] - 1).astype(int),
            numpy.clip(column, 0, label.shape[1] - 1).astype(int),
        )
        inside &= there[at]
        light = numpy.where(inside, label[at], self._body(inside.shape)) * self._lamp(inside.shape)
        on_symbol = inside & (abs(across) < self.side / 2) & (abs(down) < self.side / 2)
        if self.glare:
            light = light + self._gloss(on_symbol)
        light = light.reshape(FRAME, FINE, FRAME, FINE).mean((1, 3))
        light = ndimage.convolve(light, _disc(self.disc))
        if self.shake:
            light = ndimage.convolve(light, self._path())
        return self._exposed(light)

    def _drawing(self) -> tuple[numpy.ndarray, numpy.ndarray]:
        """Return the label as printed, and which of it is still there."""
        paper = numpy.pad(self.modules, QUIET)
        paper = numpy.vstack([paper, numpy.zeros((TEXT_MODULES, paper.shape[1]), bool)])
        ink = numpy.kron(paper, numpy.ones((CELLS, CELLS)))
        letters = Image.new("L", ink.shape[::-1], 0)
        size = (TEXT_MODULES - 1) * CELLS
        ImageDraw.Draw(letters).text(
            (ink.shape[1] / 2, ink.shape[0] - TEXT_MODULES * CELLS), self.code, 1, font_size=size, anchor="mt"
        )
        ink = numpy.maximum(ink, numpy.asarray(letters))
        # A printer's dots run a little into the paper, unevenly, and it is grey in places.
        rough = ndimage.zoom(self.random.normal(0, 1, (ink.shape[0] // 6, ink.shape[1] // 6)), 6, order=1)
        rough = numpy.pad(rough, [(0, a - b) for a, b in zip(ink.shape, rough.shape, strict=True)], "edge")
        printed = numpy.clip((ndimage.gaussian_filter(ink, 2.0) - 0.5 + 0.05 * rough) * 6 + 0.5, 0, 1)
        label = PAPER + (INK - PAPER) * printed * (0.94 + 0.03 * numpy.clip(rough, -2, 2))
        if self.contrast < 1:
            label = PAPER - (PAPER - label) * self.contrast
        if self.grease:
            label = self._greased(label)
        there = numpy.ones(label.shape, bool)
        if self.torn:
            there = self._tear(label.shape)
        return label, there

    def _greased(self, label: numpy.ndarray) -> numpy.ndarray:
        """Return the label with a thumb's wipes over 4 tenths of it: smeared, and under a brown veil."""
        width = self.side * CELLS
        mask = Image.new("L", label.shape[::-1], 0)
        pen = ImageDraw.Draw(mask)
        while numpy.asarray(mask)[QUIET * CELLS :][:width].mean() < 0.4 * 255:
            x, y = self.random.uniform(0, 1, 2) * (label.shape[1], label.shape[0])
            way, long = self.random.uniform(0, math.pi), self.random.uniform(0.3, 0.8) * width
            dx, dy = math.cos(way) * long / 2, math.sin(way) * long / 2
            pen.line((x - dx, y - dy, x + dx, y + dy), 255, int(self.random.uniform(0.1, 0.22) * width))
        over = ndimage.gaussian_filter(numpy.asarray(mask) / 255, CELLS / 2)
        streaks = ndimage.gaussian_filter(self.random.normal(0, 1, label.shape), (1, 5 * CELLS))
        veil = numpy.clip(self.grease * (1 + 3 * streaks), 0, 0.93) * over
        smeared = ndimage.gaussian_filter(label, (self.grease * CELLS, 0.6 * self.grease * CELLS))
        label = label + (smeared - label) * over
        return label + (GREASE - label) * veil

    def _tear(self, shape: tuple[int, int]) -> numpy.ndarray:
        """Return what is left where a ragged strip or corner with that share of the symbol went away."""
        ys, xs = numpy.mgrid[0 : shape[0], 0 : shape[1]] / CELLS
        middle = QUIET + self.side / 2
        way = self.random.uniform(-math.pi, math.pi)
        depth = (xs - middle) * math.cos(way) + (ys - middle) * math.sin(way)
        ragged = ndimage.gaussian_filter(self.random.normal(0, 1, shape), CELLS)
        depth = depth + ragged / ragged.std() * 0.7
        inner = slice(QUIET * CELLS, (QUIET + self.side) * CELLS)
        return depth < numpy.quantile(depth[inner, inner], 1 - self.torn)

    def _rays(self) -> tuple[numpy.ndarray, ...]:
        """Return where on the label (in modules from its middle) the ray of each sample ends, and whether."""
        far = FOCAL / self.pixels  # in modules
        fine = (numpy.arange(FRAME * FINE) + 0.5) / FINE
        x, y = numpy.meshgrid((fine - self.middle[0]) / FOCAL, (fine - self.middle[1]) / FOCAL)
        to_label = _leaning(self.lean, self.lean_way) @ _about_z(self.spin)
        rays = numpy.stack([x, y, numpy.ones_like(x)], -1) @ to_label
        eye = numpy.array([0, 0, -far]) @ to_label
        if self.radius is None:
            reach = -eye[2] / rays[..., 2]
            seen = reach > 0
            return eye[0] + reach * rays[..., 0], eye[1] + reach * rays[..., 1], seen
        # The body is a cylinder along y, its front at the label's middle.
        radius = self.radius / MODULE_MM
        from_axis = eye - (0, 0, radius)
        a = rays[..., 0] ** 2 + rays[..., 2] ** 2
        b = rays[..., 0] * from_axis[0] + rays[..., 2] * from_axis[2]
        c = from_axis[0] ** 2 + from_axis[2] ** 2 - radius**2
        under = b**2 - a * c
        reach = (-b - numpy.sqrt(numpy.maximum(under, 0))) / a
        round_x, round_z = from_axis[0] + reach * rays[..., 0], from_axis[2] + reach * rays[..., 2]
        across = (numpy.arctan2(round_x, -round_z) - self.aside) * radius
        return across, eye[1] + reach * rays[..., 1], under > 0

    def _body(self, shape: tuple[int, ...]) -> numpy.ndarray:
        """Return the black plastic under the label: grain, and scuffs that catch the light."""
        grain = self.random.normal(0, 0.012, shape)
        scuffs = Image.new("L", shape[::-1], 0)
        pen = ImageDraw.Draw(scuffs)
        for _ in range(12):
            ends = self.random.uniform(0, shape[0], 4)
            pen.line(list(ends), int(self.random.uniform(10, 60)), int(self.random.integers(1, 5)))
        return numpy.clip(BODY + grain + numpy.asarray(scuffs) / 255, 0.01, 1)

    def _lamp(self, shape: tuple[int, ...]) -> numpy.ndarray:
        """Return how strongly each spot is lit: from one side more than from the other."""
        way, fall = self.random.uniform(-math.pi, math.pi), self.random.uniform(0.1, 0.35)
        ys, xs = numpy.mgrid[-1 : 1 : shape[0] * 1j, -1 : 1 : shape[1] * 1j]
        return 1 + fall * (xs * math.cos(way) + ys * math.sin(way))

    def _gloss(self, on_symbol: numpy.ndarray) -> numpy.ndarray:
        """Return a long lamp's reflection that blinds the wanted share of the symbol."""
        ys, xs = numpy.nonzero(on_symbol)
        pick = int(self.random.integers(len(xs)))
        way, slim = self.random.uniform(0, math.pi), self.random.uniform(0.3, 0.9)
        rows, columns = numpy.mgrid[0 : on_symbol.shape[0], 0 : on_symbol.shape[1]]
        x, y = columns - xs[pick], rows - ys[pick]
        along, beside = x * math.cos(way) + y * math.sin(way), y * math.cos(way) - x * math.sin(way)
        away = along**2 + (beside / slim) ** 2
        reach = numpy.quantile(away[on_symbol], self.glare)
        return 6 * numpy.exp(-away / reach * math.log(6 / WHITE))

    def _path(self) -> numpy.ndarray:
        """Return what a shaking hand makes of a point: a bent path, not equally fast."""
        steps = 60
        turns = numpy.cumsum(self.random.normal(0, 0.06, steps)) + self.random.uniform(-math.pi, math.pi)
        pace = self.random.uniform(0.6, 1.4, steps)
        x, y = numpy.cumsum(pace * numpy.cos(turns)), numpy.cumsum(pace * numpy.sin(turns))
        long = max(math.hypot(x.max() - x.min(), y.max() - y.min()), 1e-9)
        x, y = (x - x.mean()) * self.shake / long, (y - y.mean()) * self.shake / long
        reach = math.ceil(self.shake) + 1
        kernel = numpy.zeros((2 * reach + 1, 2 * reach + 1))
        for left, top in ((0, 0), (1, 0), (0, 1), (1, 1)):
            column, row = numpy.floor(x).astype(int), numpy.floor(y).astype(int)
            share = numpy.abs(1 - left - (x - column)) * numpy.abs(1 - top - (y - row))
            numpy.add.at(kernel, (row + top + reach, column + left + reach), share)
        return kernel / kernel.sum()

    def _exposed(self, light: numpy.ndarray) -> Image.Image:
        """Return the picture as stored: what each colour's pixels caught, made smooth, toned, as a JPEG."""
        colours = []
        for share in (0.9, 1.0, 0.75):
            caught = self.random.poisson(numpy.clip(light / WHITE, 0, 1.05) * self.electrons * share)
            caught = (caught + self.random.normal(0, 3, light.shape)) / (self.electrons * share)
            if self.electrons < 1000:
                caught = ndimage.median_filter(caught, 3)  # a phone's own way against grain
            colours.append(numpy.clip(caught, 0, 1) ** (1 / 2.2) * 255)
        picture = Image.fromarray(numpy.stack(colours, -1).astype(numpy.uint8), "RGB")
        file = io.BytesIO()
        picture.save(file, "JPEG", quality=self.quality)
        return Image.open(file).convert("L")


def _about_z(angle: float) -> numpy.ndarray:
    cosine, sine = math.cos(angle), math.sin(angle)
    return numpy.array([[cosine, -sine, 0], [sine, cosine, 0], [0, 0, 1]])


def _leaning(angle: float, way: float) -> numpy.ndarray:
    cosine, sine = math.cos(angle), math.sin(angle)
    about_x = numpy.array([[1, 0, 0], [0, cosine, -sine], [0, sine, cosine]])
    return _about_z(way) @ about_x @ _about_z(-way)


def _disc(radius: float) -> numpy.ndarray:
    """Return what a lens that is out of focus makes of a point."""
    reach = math.ceil(radius) + 1
    fine = 9
    at = (numpy.arange((2 * reach + 1) * fine) + 0.5) / fine - reach - 0.5
    lit = (at[:, None] ** 2 + at**2 <= radius**2).astype(float)
    disc = lit.reshape(2 * reach + 1, fine, 2 * reach + 1, fine).mean((1, 3))
    return disc / disc.sum()


def _lean(scene: LitScene, degrees: float) -> None:
    scene.lean = math.radians(degrees)


def _night(scene: LitScene, electrons: float) -> None:
    scene.electrons = electrons
    scene.disc = 1.0


def _bent(scene: LitScene, degrees: float) -> None:
    scene.radius = 11.0 if scene.random.random() < 0.5 else 13.0
    scene.aside = math.radians(degrees) * scene.random.choice([-1, 1])


def _faded(scene: LitScene, percent: float) -> None:
    scene.contrast = percent / 100
    scene.electrons = 1000.0


KINDS = {
    "leaning": Kind((35, 45, 53, 60), "degrees off the line of sight", _lean),
    "focus": Kind((1.5, 2.1, 2.7, 3.2), "pixels, radius of the lens's disc", sets("disc")),
    "shake": Kind((3.0, 4.5, 6.0, 7.5), "pixels of the hand's path", sets("shake")),
    "glare": Kind((2, 4, 7, 10), "per cent of the symbol blinded", sets("glare", 100)),
    "smudge": Kind((0.3, 0.42, 0.54, 0.66), "of the light lost under grease that smears", sets("grease")),
    "night": Kind((200, 80, 40, 20), "electrons in a white pixel", _night),
    "bent": Kind((0, 8, 16, 24), "degrees turned aside, round 22 or 26 mm", _bent),
    "torn": Kind((2, 4, 6, 8), "per cent of the symbol gone", sets("torn", 100)),
    "faded": Kind((40, 28, 19, 13), "per cent of the ink left", _faded),
    "tiny": Kind((2.6, 2.1, 1.8, 1.55), "pixels a module", sets("pixels")),
}


def picture(kind: str, severity: int, number: int) -> Picture:
    """Return picture `number` of a kind at a severity from 1 to 4."""
    return picture_of(LitScene([400, sorted(KINDS).index(kind), severity, number]), KINDS[kind], severity)
