"""How labels lie on paper: a sheet with a grid, or a roll with one label a page; checked, in printer dots.

What is left out of the options gets its ready-made value. Everything that comes out is in whole dots of
the printer, so that nothing is smeared between two of them.
"""

from collections import namedtuple

from ..errors import BadInput
from ..messages import message
from .measures import dots
from .measures import figure
from .measures import pair
from .measures import parsed_pair
from .measures import size_words

PAPERS = {"a4": (21000, 29700), "letter": (21590, 27940)}  # 1/100 mm; ISO 216, ANSI/ASME Y14.1
PAPER_NAMES = ("a4", "letter")
DPIS = (203, 300)
OPTIONS = ("paper", "grid", "label", "margin", "gap", "precut", "roll", "dpi")

_SHEET_ONLY = ("paper", "grid", "label", "margin", "gap", "precut")
_SIDE, _TOP, _FOOT = 800, 1500, 2200  # 1/100 mm that stay free on a sheet that is cut by hand
_LABEL = (2600, 3200)  # 1/100 mm
_LEAST, _MOST = 800, 30000  # 1/100 mm of a label's side
_MOST_PLACES = 40
# 1/100 mm that the print keeps from every edge of a label, because no cut and no printer is exact. Labels
# that are cut already lie up to 1.5 mm beside where they should, those of a roll up to 1 mm, along it and
# across; scissors go up to 1 mm beside a mark (common practice, no source). A dot more, for letters reach a
# hair beyond their place.
LEAST_EDGE, _EDGE_ROLL, _EDGE_MARKED, _EDGE_PRECUT = 40, 110, 110, 160

_Fields = namedtuple(
    "_Fields",
    (
        "dpi",
        "page_width",
        "page_height",
        "columns",
        "rows",
        "width",
        "height",
        "left",
        "top",
        "across",
        "down",
        "marked",
        "edge",
        "words",
    ),
)


class Layout(_Fields):
    """One page of labels, in dots; a roll is a page that holds one label and nothing else.

    `across` and `down` are the gaps between columns and rows; `marked` asks for cut marks, and for the
    note at the foot where there is room; `edge` (1/100 mm) is what the print is to keep from every edge of a
    label, and so of the paper; `words` says "A4, 7 by 8 labels of 26 x 32 mm".
    """

    @property
    def labels(self) -> int:
        """How many labels a page holds."""
        return self.columns * self.rows

    def dots(self, length: int) -> int:
        """Return a length (1/100 mm) in whole dots."""
        return dots(length, self.dpi)

    def corner(self, place: int) -> tuple:
        """Return where the label at a place of the page begins."""
        column, row = place % self.columns, place // self.columns
        return self.left + column * (self.width + self.across), self.top + row * (self.height + self.down)


def layout_of(options: dict) -> Layout:
    """Return the layout that the options (some of OPTIONS, as texts) ask for."""
    given = {}
    for name in OPTIONS:
        if options.get(name):
            given[name] = options[name]
            if not isinstance(given[name], str):
                raise BadInput(name, given[name], "text")
    return _roll(given) if "roll" in given else _sheet(given)


def paper_of(options: dict) -> list:
    """Return width and height of the paper that good options ask for, in 1/100 mm."""
    if options.get("roll"):
        return list(pair("roll", options["roll"], "30x20"))
    return list(PAPERS[(options.get("paper") or "a4").lower()])


def one_label(layout: Layout) -> Layout:
    """Return a page with a single label of a layout, to look at it."""
    width, height = layout.width, layout.height
    return Layout(
        layout.dpi, width, height, 1, 1, width, height, 0, 0, 0, 0, False, layout.edge, layout.words
    )  # fmt: skip


def _roll(given: dict) -> Layout:
    for name in _SHEET_ONLY:
        if name in given:
            raise BadInput(name, given[name], message("printing-wanted-no-roll"))
    dpi = _dpi(given, "203")
    size = _label("roll", given["roll"], "30x20")
    width, height = dots(size[0], dpi), dots(size[1], dpi)
    told = message("printing-layout-roll", size=size_words(size), dpi=str(dpi))
    return Layout(dpi, width, height, 1, 1, width, height, 0, 0, 0, 0, False, _EDGE_ROLL, told)


def _sheet(given: dict) -> Layout:
    name = given.get("paper", "a4").lower()
    if name not in PAPER_NAMES:
        raise BadInput("paper", name, _one_of(PAPER_NAMES))
    paper = PAPERS[name]
    dpi, precut = _dpi(given, "300"), given.get("precut", "no")
    if precut not in ("yes", "no"):
        raise BadInput("precut", precut, message("printing-wanted-yes-or-no"))
    gaps = pair("gap", given.get("gap", "0x0"), "2.5x0")
    margins = pair("margin", given["margin"], "8x15") if "margin" in given else None
    counts, size = _grid(given, _free(paper, margins, precut == "yes"), gaps)
    spans = [counts[n] * size[n] + (counts[n] - 1) * gaps[n] for n in (0, 1)]
    begin = margins or _margins(paper, spans, precut == "yes")
    for n in (0, 1):
        if begin[n] + spans[n] > paper[n]:
            found = message(
                "printing-found-span",
                columns=counts[0],
                rows=counts[1],
                size=size_words(size),
                span=figure(begin[n] + spans[n]),
                side=("wide", "high")[n],
            )
            raise BadInput("grid", (found,), message("printing-wanted-span", most=figure(paper[n])))
    told = message(
        "printing-layout-sheet", paper=name, columns=counts[0], rows=counts[1], size=size_words(size)
    )
    page, label, start, between = [[dots(side, dpi) for side in each] for each in (paper, size, begin, gaps)]
    return Layout(
        dpi, page[0], page[1], counts[0], counts[1], label[0], label[1], start[0], start[1],
        between[0], between[1], precut == "no", _EDGE_PRECUT if precut == "yes" else _EDGE_MARKED, told,
    )  # fmt: skip


def _free(paper, margins, precut: bool) -> list:
    """Return how much of the paper labels may take."""
    side, top = margins or ((0, 0) if precut else (_SIDE, _TOP))
    foot = top if precut or margins else _FOOT
    return [paper[0] - 2 * side, paper[1] - top - foot]


def _grid(given: dict, free: list, gaps) -> tuple:
    """Return how many labels of which size: as asked, else as many, or as large, as fit."""
    size = _label("label", given["label"], "26x32") if "label" in given else None
    if "grid" not in given:
        size = size or _LABEL
        return tuple([max(1, (free[n] + gaps[n]) // (size[n] + gaps[n])) for n in (0, 1)]), size
    wanted = message("printing-wanted-grid", most=_MOST_PLACES)
    counts = parsed_pair("grid", given["grid"], wanted)
    for count in counts:
        if count % 100 or not 1 <= count // 100 <= _MOST_PLACES:
            raise BadInput("grid", given["grid"], wanted)
    counts = (counts[0] // 100, counts[1] // 100)
    if size is None:
        sides = [(free[n] - (counts[n] - 1) * gaps[n]) // counts[n] for n in (0, 1)]
        if min(sides) < _LEAST:
            raise BadInput("grid", given["grid"], message("printing-wanted-few", least=figure(_LEAST)))
        size = (sides[0] // 10 * 10, sides[1] // 10 * 10)
    return counts, size


def _margins(paper, spans: list, precut: bool) -> tuple:
    """Return where the grid begins when nobody says so: in the middle, with room for the note below."""
    left, top = (paper[0] - spans[0]) // 2, (paper[1] - spans[1]) // 2
    if not precut and _TOP + spans[1] + _FOOT <= paper[1]:
        top = _TOP
    return max(0, left), max(0, top)


def _dpi(given: dict, usual: str) -> int:
    text = given.get("dpi", usual)
    known = [str(dpi) for dpi in DPIS]
    if text not in known:
        raise BadInput("dpi", text, _one_of(known))
    return int(text)


def _label(name: str, text: str, example: str) -> tuple:
    size = pair(name, text, example)
    if not _LEAST <= min(size) <= max(size) <= _MOST:
        raise BadInput(name, text, message("printing-wanted-sides", least=figure(_LEAST), most=figure(_MOST)))
    return size


def _one_of(options) -> dict:
    return message("printing-wanted-one-of", options=", ".join(options))
