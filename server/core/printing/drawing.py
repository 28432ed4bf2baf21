"""What a screen asks while labels are chosen and printed: the plan of a layout, and pages to draw.

`versions` says, level by level, the smallest version that holds the text of a label of `base`, by the
library that will draw it: see `face`.
"""

from ..codes import labels
from ..errors import BadInput
from .advice import plan
from .advice import refuse_unreadable
from .batches import MOST_LABELS
from .face import ANY_CODE
from .face import face_of
from .layout import layout_of
from .layout import one_label
from .layout import paper_of
from .measures import length_of
from .scan_distance import checked_distance
from .sheet import pages


def specimen(base: str) -> str:
    """Return the text of a label that is never issued; those of all labels are as long."""
    return labels.address(ANY_CODE, base)


def planned(options: dict, distance: str, versions: dict, base: str, forced: bool) -> dict:
    """Return what comes out; a layout that does not work is an answer too, for its measures are typed.

    One that nobody could read is none either, unless it is `forced`; the answer then has `may_force`.
    """
    try:
        layout, face, distance_cm = _layout_and_face(options, distance, versions, base)
    except BadInput as error:
        return {"fault": error.message()}
    try:
        refuse_unreadable(layout, face, forced)
    except BadInput as error:
        return {"fault": error.message(), "may_force": True}
    found = plan(layout, face, distance_cm)
    found["fault"] = ""
    found["most"] = MOST_LABELS
    return found


def drawn(options: dict, distance: str, versions: dict, base: str, codes: list | None, one: bool) -> dict:
    """Return pages, their lengths in dots; without `codes` a page, or `one`, of specimens.

    `paper` is in 1/100 mm: paper is no whole number of dots.
    """
    layout, face, _ = _layout_and_face(options, distance, versions, base)
    if one:
        layout = one_label(layout)
    choice, label = face.choice, (layout.width, layout.height)
    return {
        "dpi": layout.dpi,
        "paper": [length_of(side, layout.dpi) for side in label] if one else paper_of(options),
        "level": choice.level,
        "version": choice.version,
        "dots": choice.dots,
        "pages": [
            {"boxes": page.boxes, "lines": page.lines, "symbols": page.symbols, "ruler": page.ruler}
            for page in pages([ANY_CODE] * layout.labels if codes is None else codes, base, layout, face)
        ],
    }


def _layout_and_face(options: dict, distance: str, versions: dict, base: str) -> tuple:
    distance_cm = checked_distance(distance)
    layout = layout_of(options)
    return layout, face_of(layout, versions, base, distance_cm), distance_cm
