"""What comes out of a layout, in words, and warnings where it will be hard to read."""

from .face import COVERED
from .face import Face
from .layout import Layout
from .measures import length_of
from .measures import words
from .scan_distance import LEAST_DOTS
from .scan_distance import RULE
from .scan_distance import farthest_cm
from .scan_distance import wanted_dots

# 1/100 mm; print smaller than this is guesswork on a dirty part; common practice, no source.
_LEAST_TYPE = 250


def plan(layout: Layout, face: Face, distance_cm: int) -> dict:
    """Return what a person who is choosing a layout wants to know of it."""
    return {
        "summary": summary(layout, face),
        "warnings": warnings(layout, face, distance_cm),
        "rule": RULE,
        "a_page": layout.labels,
    }


def summary(layout: Layout, face: Face) -> str:
    """Return what comes out, in one line of figures."""
    choice = face.choice
    return (
        "{}. Symbol version {}, level {} (about {} % of it may be covered), {} or {} mm a module; "
        "scans from up to {} cm."
    ).format(
        layout.words,
        choice.version,
        choice.level,
        COVERED[choice.level],
        _dots(choice.dots),
        _two_places(length_of(choice.dots, layout.dpi)),
        farthest_cm(choice.dots, layout.dpi),
    )


def warnings(layout: Layout, face: Face, distance_cm: int) -> list:
    """Return a sentence or two for each thing that will make the labels hard to read."""
    found = []
    choice = face.choice
    farthest = farthest_cm(choice.dots, layout.dpi)
    if choice.dots < LEAST_DOTS:
        found.append(
            "Too fine for this printer: a module is {} wide, and fewer than {} smear. {}".format(
                _dots(choice.dots), LEAST_DOTS, _larger(layout, face, LEAST_DOTS)
            )
        )
    if farthest < distance_cm:
        found.append(
            "Too small to scan from {} cm: a module of {} mm scans from up to {} cm. {}".format(
                distance_cm,
                _two_places(length_of(choice.dots, layout.dpi)),
                farthest,
                _larger(layout, face, wanted_dots(layout.dpi, distance_cm)),
            )
        )
    high = face.type_size * 2540 // (layout.dpi * 100)
    if high < _LEAST_TYPE:
        found.append(
            "The code in letters is only {} mm high; where the symbol is dirty, nobody will be able to "
            "type it.".format(words((high + 5) // 10 * 10))
        )
    return found


def _larger(layout: Layout, face: Face, dots: int) -> str:
    modules = face.choice.across // face.choice.dots
    side = -(-modules * dots * 254 // (layout.dpi * 10))
    return "The symbol wants {} mm with its margin: take larger labels or a shorter distance.".format(side)


def _two_places(length: int) -> str:
    return "{}.{}{}".format(length // 100, length // 10 % 10, length % 10)


def _dots(count: int) -> str:
    return "{} dot".format(count) if count == 1 else "{} dots".format(count)
