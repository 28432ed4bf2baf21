"""What all drawn pictures of labels have in common: a label of its own, and troubles in known steps.

How a picture comes about is each set's own (`degraded_labels`, `yard_labels`), so that they stay unlike.
"""

from collections.abc import Callable
from typing import Any
from typing import NamedTuple

import numpy
from PIL import Image

from server.core.codes.labels import address
from server.core.codes.labels import codes_from
from server.labelling.symbol import matrix

FRAME = 720  # the middle square of a camera's 1280x720, which is what the finder shows
MODULE_MM = 0.5


class Picture(NamedTuple):
    """One picture and what its label says."""

    image: Image.Image
    text: str


class Kind(NamedTuple):
    """One kind of trouble: what its steps are, and what they do to the scene."""

    steps: tuple[float, ...]
    unit: str
    apply: Callable[[Any, float], None]


class Scene:
    """A label before a camera."""

    def __init__(self, seed: list[int], bases: tuple[str, ...]) -> None:
        """Draw a label of its own, of one of the installations at `bases`."""
        self.random = numpy.random.default_rng(seed)
        self.code = codes_from([int(byte) for byte in self.random.integers(0, 256, 200)], 1)[0]
        self.text = address(self.code, bases[int(self.random.integers(len(bases)))])
        self.modules = numpy.array(matrix(self.text))

    @property
    def side(self) -> int:
        """Return how many modules the symbol is wide."""
        return len(self.modules)

    def draw(self) -> Image.Image:
        """Return what the camera delivers."""
        raise NotImplementedError


def sets(name: str, whole: float = 1) -> Callable[[Scene, float], None]:
    """Return what sets one attribute of a scene; a step is in parts of `whole` (100: per cent)."""
    return lambda scene, step: setattr(scene, name, step / whole)


def picture_of(scene: Scene, kind: Kind, step: int) -> Picture:
    """Return the picture of a scene with the trouble at a step from 1 on."""
    kind.apply(scene, kind.steps[step - 1])
    return Picture(scene.draw(), scene.text)
