"""What comes out of a layout, warnings where it will be hard to read, a refusal where it cannot be read."""

from ..errors import BadInput
from ..messages import decimal
from ..messages import message
from ..messages import sentences
from .face import COVERED
from .face import Face
from .layout import Layout
from .measures import figure
from .measures import length_of
from .scan_distance import LEAST_DOTS
from .scan_distance import RULE
from .scan_distance import farthest_cm
from .scan_distance import wanted_dots

# 1/100 mm; print smaller than this is guesswork on a dirty part; common practice, no source.
_LEAST_TYPE = 250
_READABLE_DOTS = 2  # a module of one dot is lost with a dot beside it; common practice, no source


def refuse_unreadable(layout: Layout, face: Face, forced: bool) -> None:
    """Refuse modules of a single dot, which no printer keeps apart, unless somebody wants them so."""
    if face.choice.dots < _READABLE_DOTS and not forced:
        found = message("printing-found-dots", dots=_dots(face.choice.dots), layout=layout.words)
        wanted = message("printing-wanted-dots", side=_side(layout, face, LEAST_DOTS))
        raise BadInput("label", (found,), wanted)


def plan(layout: Layout, face: Face, distance_cm: int) -> dict:
    """Return what a person who is choosing a layout wants to know of it."""
    return {
        "summary": summary(layout, face),
        "warnings": warnings(layout, face, distance_cm),
        "rule": RULE,
        "a_page": layout.labels,
    }


def summary(layout: Layout, face: Face) -> dict:
    """Return what comes out, in one line of figures."""
    choice = face.choice
    return message(
        "printing-summary",
        layout=layout.words,
        version=str(choice.version),
        level=choice.level,
        covered=COVERED[choice.level],
        dots=_dots(choice.dots),
        length=decimal(length_of(choice.dots, layout.dpi), 2),
        farthest=farthest_cm(choice.dots, layout.dpi),
    )


def warnings(layout: Layout, face: Face, distance_cm: int) -> list:
    """Return a sentence or two for each thing that will make the labels hard to read."""
    found = []
    choice = face.choice
    farthest = farthest_cm(choice.dots, layout.dpi)
    if choice.dots < LEAST_DOTS:
        fine = message("printing-too-fine", dots=_dots(choice.dots), least=LEAST_DOTS)
        found.append(sentences([fine, _larger(layout, face, LEAST_DOTS)]))
    if farthest < distance_cm:
        small = message(
            "printing-too-small",
            distance=distance_cm,
            length=decimal(length_of(choice.dots, layout.dpi), 2),
            farthest=farthest,
        )
        found.append(sentences([small, _larger(layout, face, wanted_dots(layout.dpi, distance_cm))]))
    if face.edge < layout.dots(layout.edge) and not layout.marked:  # a hand can take more care, a printer not
        about = {"edge": figure(layout.edge), "left": figure(length_of(face.edge, layout.dpi) // 10 * 10)}
        found.append(message("printing-near-edge", **about))
    high = face.type_size * 2540 // (layout.dpi * 100)
    if high < _LEAST_TYPE:
        found.append(message("printing-type-small", high=figure((high + 5) // 10 * 10)))
    return found


def _larger(layout: Layout, face: Face, dots: int) -> dict:
    return message("printing-larger", side=_side(layout, face, dots))


def _side(layout: Layout, face: Face, dots: int) -> int:
    """Return how many mm the symbol takes with its margin where a module is so many dots."""
    modules = face.choice.across // face.choice.dots
    return -(-modules * dots * 254 // (layout.dpi * 10))


def _dots(count: int) -> dict:
    return message("printing-dots", count=count)
