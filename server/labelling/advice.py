"""What comes out of a layout, in words, and warnings where it will be hard to read."""

import math

from server.labelling.face import Face
from server.labelling.layout import Layout
from server.labelling.reach import reach_mm
from server.labelling.reach import wanted_dots
from server.labelling.symbol import LEAST_DOTS
from server.labelling.symbol import LEVELS

_LEAST_TYPE_MM = 2.5  # print smaller than this is guesswork on a dirty part; common practice, no source


def summary(layout: Layout, face: Face) -> str:
    """Returns what comes out, in one line of figures."""
    choice = face.choice
    return (
        f"{layout.words}. Symbol version {choice.version}, level {choice.level} (about "
        f"{LEVELS[choice.level]} % of it may be covered), {_dots(choice.dots)} or "
        f"{choice.dots * layout.dot_mm:.2f} mm a module; scans from up to {_reach_cm(layout, face)} cm."
    )


def warnings(layout: Layout, face: Face, distance_cm: int) -> list[str]:
    """Returns a sentence or two for each thing that will make the labels hard to read."""
    found = []
    choice = face.choice
    module_mm = choice.dots * layout.dot_mm
    if choice.dots < LEAST_DOTS:
        found.append(
            f"Too fine for this printer: a module is {_dots(choice.dots)} wide, and fewer than "
            f"{LEAST_DOTS} smear. {_larger(layout, face, LEAST_DOTS)}"
        )
    if _reach_cm(layout, face) < distance_cm:
        found.append(
            f"Too small to scan from {distance_cm} cm: a module of {module_mm:.2f} mm scans from up to "
            f"{_reach_cm(layout, face)} cm. {_larger(layout, face, wanted_dots(layout, distance_cm))}"
        )
    if face.type_size * layout.dot_mm < _LEAST_TYPE_MM:
        found.append(
            f"The code in letters is only {face.type_size * layout.dot_mm:.1f} mm high; where the symbol is "
            "dirty, nobody will be able to type it."
        )
    return found


def _reach_cm(layout: Layout, face: Face) -> int:
    return int(reach_mm(face.choice.dots * layout.dot_mm) / 10 + 0.005)


def _larger(layout: Layout, face: Face, dots: int) -> str:
    side = face.choice.across // face.choice.dots * dots * layout.dot_mm
    return f"The symbol wants {math.ceil(side)} mm with its margin: take larger labels or a shorter distance."


def _dots(count: int) -> str:
    return f"{count} dot" if count == 1 else f"{count} dots"
