"""Draws labels as a camera sees them in a yard: tilted, dirty, dark, wrapped round a sensor, in known steps.

Each kind of trouble has six steps; the first three are the mild half. What a step means is written down in
`KINDS`, in the units of the thing itself (degrees, pixels, share of the symbol). The same kind, step and
number always give the same picture. The label comes from the project's own sheet code.
"""

import math

import numpy
from PIL import Image
from scipy import ndimage

from server.core.printing.face import QUIET_MODULES as QUIET
from tests.static.drawn_labels import FRAME
from tests.static.drawn_labels import MODULE_MM
from tests.static.drawn_labels import Kind
from tests.static.drawn_labels import Picture
from tests.static.drawn_labels import Scene
from tests.static.drawn_labels import picture_of
from tests.static.drawn_labels import sets

STEPS = 6
MILD_STEPS = 3
PIXELS_A_MODULE = 4.0  # a module of 0.5 mm at 20 cm, 1920 pixels over 65 degrees: 3.8
SENSOR_RADIUS_MM = 11.0
CAMERA_MM = 120.0
INK, PAPER = 28.0, 215.0
FINE = 3  # samples a side of a pixel
BASES = ("http://yard:8765", "https://returns.example:8443")  # symbol versions 2 and 3


class YardScene(Scene):
    """A label before a camera: where it lies and what is between it and the picture."""

    def __init__(self, seed: list[int]) -> None:
        """Put a label of its own flat before the camera, nearly upright, nearly in the middle."""
        super().__init__(seed, BASES)
        self.angle = math.radians(self.random.uniform(-10, 10))
        self.scale = PIXELS_A_MODULE * self.random.uniform(0.95, 1.05)
        self.middle = FRAME / 2 + self.random.uniform(-40, 40, 2)
        self.tilt = 0.0
        self.tilt_axis = 0.0
        self.roll: float | None = None
        self.lens_blur = 0.6
        self.motion = 0.0
        self.noise = 3.0
        self.electrons = 0.0
        self.glare = 0.0
        self.dirt = 0.0

    def draw(self) -> Image.Image:
        """Return what the camera delivers."""
        light = self._scenery()
        half = int(self.scale * (self.side / 2 + QUIET + 3) * 1.5)
        left, top = (self.middle - half).astype(int)
        light[top : top + 2 * half, left : left + 2 * half] = self._label(left, top, 2 * half, light)
        light = ndimage.gaussian_filter(light, self.lens_blur)
        if self.motion:
            light = _smeared(light, self.motion, self.random.uniform(0, math.pi))
        if self.glare:
            light = light + self._glare()
        return Image.fromarray(self._exposed(light))

    def _scenery(self) -> numpy.ndarray:
        """Return what lies around the label: a dark bumper, uneven, with a few bright edges."""
        rough = self.random.normal(0, 1, (FRAME // 16, FRAME // 16))
        light = 70 + 14 * ndimage.zoom(rough, 16, order=1)
        for _ in range(4):
            at, wide = int(self.random.integers(0, FRAME - 20)), int(self.random.integers(2, 14))
            light[:, at : at + wide] += self.random.uniform(-40, 60)
        return light

    def _label(self, left: int, top: int, size: int, ground: numpy.ndarray) -> numpy.ndarray:
        """Return the part of the picture that holds the label, several samples for each pixel."""
        fine = numpy.arange(size * FINE) / FINE + 0.5 / FINE
        x, y = numpy.meshgrid(fine + left - self.middle[0], fine + top - self.middle[1])
        across, down, seen = self._on_paper(x / self.scale, y / self.scale)
        paper = self._paper()
        edge = self.side / 2 + QUIET
        inside = seen & (abs(across) < edge) & (abs(down) < edge)
        column = numpy.clip((across + edge).astype(int), 0, len(paper) - 1)
        row = numpy.clip((down + edge).astype(int), 0, len(paper) - 1)
        value = numpy.where(paper[row, column], INK, PAPER)
        if self.dirt:
            value = self._dirty(value, across, down)
        behind = numpy.kron(ground[top : top + size, left : left + size], numpy.ones((FINE, FINE)))
        value = numpy.where(inside, value, behind)
        return value.reshape(size, FINE, size, FINE).mean((1, 3))

    def _paper(self) -> numpy.ndarray:
        return numpy.pad(self.modules, QUIET)

    def _on_paper(self, x: numpy.ndarray, y: numpy.ndarray) -> tuple[numpy.ndarray, ...]:
        """Return where on the label (in modules from its middle) each point of the picture lies."""
        seen = numpy.ones(x.shape, bool)
        if self.tilt:
            x, y = _turned(x, y, self.tilt_axis)
            far = CAMERA_MM / MODULE_MM
            # a ray through (x, y) meets the plane that is turned about the y axis
            depth = x * far * math.tan(self.tilt) / (far - x * math.tan(self.tilt))
            x, y = (x + x * depth / far) / math.cos(self.tilt), y + y * depth / far
            x, y = _turned(x, y, -self.tilt_axis)
        x, y = _turned(x, y, self.angle)
        if self.roll is not None:
            radius = SENSOR_RADIUS_MM / MODULE_MM
            inside = x / radius
            seen = abs(inside) < 1
            x = (numpy.arcsin(numpy.clip(inside, -1, 1)) - self.roll) * radius
        return x, y, seen

    def _dirty(self, value: numpy.ndarray, across: numpy.ndarray, down: numpy.ndarray) -> numpy.ndarray:
        """Return the label with clods of a middling brown on it until the share is covered."""
        cells = 8
        size = self.side * cells
        covered = numpy.zeros((size, size), bool)
        ys, xs = numpy.mgrid[0:size, 0:size] / cells
        while covered.mean() < self.dirt:
            x, y = self.random.uniform(0, self.side, 2)
            long, short = self.random.uniform(0.8, 2.6), self.random.uniform(0.5, 1.0)
            dx, dy = _turned(xs - x, ys - y, self.random.uniform(0, math.pi))
            covered |= (dx / long) ** 2 + (dy / (long * short)) ** 2 < 1
        column = ((across + self.side / 2) * cells).astype(int)
        row = ((down + self.side / 2) * cells).astype(int)
        within = (column >= 0) & (column < size) & (row >= 0) & (row < size)
        hit = within & covered[numpy.clip(row, 0, size - 1), numpy.clip(column, 0, size - 1)]
        return numpy.where(hit, 85.0, value)

    def _glare(self) -> numpy.ndarray:
        """Return a lamp's reflection somewhere on the symbol: blinding in its middle, fading outwards."""
        width = self.side * self.scale
        x, y = self.middle + self.random.uniform(-0.5, 0.5, 2) * width
        ys, xs = numpy.mgrid[0:FRAME, 0:FRAME]
        away = ((xs - x) ** 2 + (ys - y) ** 2) / (self.glare * width) ** 2
        return 600 * numpy.exp(-2 * away)

    def _exposed(self, light: numpy.ndarray) -> numpy.ndarray:
        """Return eight bits a pixel: shot noise where light is scarce, then the sensor's own noise."""
        if self.electrons:
            caught = self.random.poisson(numpy.clip(light, 0, None) / 255 * self.electrons)
            caught = caught + self.random.normal(0, 2, light.shape)
            # The camera turns its gain up, but not without end: the picture stays dark as well.
            light = caught / self.electrons * 255 * min(1.0, self.electrons / 100) ** 0.5
        light = light + self.random.normal(0, self.noise, light.shape)
        return numpy.clip(light + 0.5, 0, 255).astype(numpy.uint8)


def _turned(x, y, angle):
    cosine, sine = math.cos(angle), math.sin(angle)
    return x * cosine + y * sine, y * cosine - x * sine


def _smeared(light: numpy.ndarray, length: float, angle: float) -> numpy.ndarray:
    """Return the picture as a hand moves while the shutter is open."""
    reach = math.ceil(length / 2) + 1
    ys, xs = numpy.mgrid[-reach : reach + 1, -reach : reach + 1]
    along, beside = _turned(xs, ys, angle)
    kernel = numpy.clip(length / 2 + 0.5 - abs(along), 0, 1) * numpy.clip(1 - abs(beside), 0, 1)
    return ndimage.convolve(light, kernel / kernel.sum())


def _rotated(scene: YardScene, degrees: float) -> None:
    scene.angle = math.radians(degrees - scene.random.uniform(0, 15))


def _tilted(scene: YardScene, degrees: float) -> None:
    scene.tilt = math.radians(degrees)
    scene.tilt_axis = scene.random.uniform(0, 2 * math.pi)


def _curved(scene: YardScene, degrees: float) -> None:
    scene.roll = math.radians(degrees) * scene.random.choice([-1, 1])
    scene.angle = scene.random.uniform(0, 2 * math.pi)


def _all_at_once(scene: YardScene, times: float) -> None:
    _tilted(scene, 9 * times)
    scene.motion = 0.7 * times
    scene.lens_blur = 0.6 + 0.12 * times
    scene.noise = 4 * times
    scene.dirt = 0.6 * times / 100
    scene.scale = PIXELS_A_MODULE - 0.2 * times


KINDS = {
    "rotation": Kind((15, 30, 45, 60, 75, 90), "degrees in the picture", _rotated),
    "perspective": Kind((15, 25, 35, 45, 55, 65), "degrees off the line of sight", _tilted),
    "blur": Kind((1.0, 1.3, 1.6, 2.0, 2.5, 3.0), "pixels, sigma, out of focus", sets("lens_blur")),
    "motion": Kind((2.0, 3.5, 5.0, 6.5, 8.0, 9.5), "pixels moved while exposed", sets("motion")),
    "noise": Kind((15, 25, 35, 50, 70, 95), "grey levels, sigma", sets("noise")),
    "low light": Kind((160, 80, 40, 24, 16, 10), "electrons in a white pixel", sets("electrons")),
    "glare": Kind((0.1, 0.15, 0.2, 0.3, 0.4, 0.55), "symbol widths, radius of the reflection", sets("glare")),
    "dirt": Kind((1, 2, 4, 7, 10, 14), "per cent of the symbol covered", sets("dirt", 100)),
    "small": Kind((3.0, 2.5, 2.0, 1.7, 1.5, 1.3), "pixels a module", sets("scale")),
    "curved": Kind((0, 8, 16, 24, 32, 40), "degrees turned aside, round 22 mm", _curved),
    "all at once": Kind((1, 2, 3, 4, 5, 6), "times a little of everything", _all_at_once),
}


def picture(kind: str, step: int, number: int) -> Picture:
    """Return picture `number` of a kind at a step from 1 to 6."""
    return picture_of(YardScene([sorted(KINDS).index(kind), step, number]), KINDS[kind], step)
