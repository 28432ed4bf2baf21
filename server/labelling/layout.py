"""How labels lie on paper: a sheet with a grid, or a roll with one label a page; checked, in printer dots.

Whoever asks (command line, print screen) hands in texts by name; what is left out gets its ready-made
value. Everything here is in whole dots of the printer, so that nothing is smeared between two of them.
"""

import re
from collections.abc import Mapping
from typing import NamedTuple

from server.core.errors import BadInput

PAPERS = {"a4": (210.0, 297.0), "letter": (215.9, 279.4)}  # mm; ISO 216, ANSI/ASME Y14.1
DPIS = (203, 300)
OPTIONS = ("paper", "grid", "label", "margin", "gap", "precut", "roll", "dpi")

_SHEET_ONLY = ("paper", "grid", "label", "margin", "gap", "precut")
_SIDE, _TOP, _FOOT = 8.0, 15.0, 22.0  # mm that stay free on a sheet that is cut by hand
_LABEL = (26.0, 32.0)  # mm
_LEAST, _MOST = 8.0, 300.0  # mm of a label's side
_MOST_PLACES = 40
_PAIR = re.compile(r"\s*(\d{1,3}(?:\.\d{1,2})?)\s*[x×]\s*(\d{1,3}(?:\.\d{1,2})?)\s*")
_LENGTHS = "two lengths in millimetres with an x between, such as {}"


class Layout(NamedTuple):
    """One page of labels, in dots; a roll is a page that holds one label and nothing else."""

    dpi: int
    page_width: int
    page_height: int
    columns: int
    rows: int
    width: int
    height: int
    left: int
    top: int
    across: int  # gap between columns
    down: int  # gap between rows
    marked: bool  # cut marks, and the note at the foot where there is room
    words: str  # "A4, 7 by 8 labels of 26 x 32 mm"

    @property
    def labels(self) -> int:
        """How many labels a page holds."""
        return self.columns * self.rows

    @property
    def dot_mm(self) -> float:
        """How wide a dot is."""
        return 25.4 / self.dpi

    def dots(self, millimetres: float) -> int:
        """Returns a length in whole dots."""
        return _dots(millimetres, self.dpi)

    def corner(self, place: int) -> tuple[int, int]:
        """Returns where the label at a place of the page begins."""
        column, row = place % self.columns, place // self.columns
        return self.left + column * (self.width + self.across), self.top + row * (self.height + self.down)


def layout_of(options: Mapping[str, str | None]) -> Layout:
    """Returns the layout that the options (some of OPTIONS) ask for."""
    given = {name: value for name in OPTIONS if (value := options.get(name))}
    return _roll(given) if "roll" in given else _sheet(given)


def _roll(given: dict[str, str]) -> Layout:
    for name in _SHEET_ONLY:
        if name in given:
            raise BadInput(name, given[name], "nothing beside a roll: it is an option of sheets")
    dpi = _dpi(given, "203")
    size = _label("roll", given["roll"], "30x20")
    width, height = (_dots(side, dpi) for side in size)
    words = f"Roll, labels of {_words(size)}, {dpi} dpi"
    return Layout(dpi, width, height, 1, 1, width, height, 0, 0, 0, 0, False, words)


def _sheet(given: dict[str, str]) -> Layout:
    paper = given.get("paper", "a4").lower()
    if paper not in PAPERS:
        raise BadInput("paper", paper, "one of " + ", ".join(PAPERS))
    dpi, precut = _dpi(given, "300"), given.get("precut", "no")
    if precut not in {"yes", "no"}:
        raise BadInput("precut", precut, "yes or no")
    gaps = _pair("gap", given.get("gap", "0x0"), _LENGTHS.format("2.5x0"))
    margins = _pair("margin", given["margin"], _LENGTHS.format("8x15")) if "margin" in given else None
    free = _free(PAPERS[paper], margins, precut == "yes")
    counts, size = _grid(given, free, gaps)
    spans = [n * side + (n - 1) * gap for n, side, gap in zip(counts, size, gaps, strict=True)]
    begin = margins or _margins(PAPERS[paper], spans, precut == "yes")
    for name, start, span, most in zip(("wide", "high"), begin, spans, PAPERS[paper], strict=True):
        if start + span > most:
            found = f"{counts[0]} by {counts[1]} labels of {_words(size)}: {start + span:g} mm {name}"
            raise BadInput("grid", found, f"at most {most:g} mm, margin included")
    dots = [_dots(each, dpi) for pair in (PAPERS[paper], size, begin, gaps) for each in pair]
    page_width, page_height, width, height, left, top, across, down = dots
    name = "A4" if paper == "a4" else "US Letter"
    return Layout(
        dpi, page_width, page_height, *counts, width, height, left, top, across, down, precut == "no",
        f"{name}, {counts[0]} by {counts[1]} labels of {_words(size)}",
    )  # fmt: skip


def _free(paper: tuple[float, float], margins: tuple[float, float] | None, precut: bool) -> list[float]:
    """Returns how much of the paper labels may take."""
    side, top = margins or ((0.0, 0.0) if precut else (_SIDE, _TOP))
    foot = top if precut or margins else _FOOT
    return [paper[0] - 2 * side, paper[1] - top - foot]


def _grid(
    given: dict[str, str], free: list[float], gaps: tuple[float, float]
) -> tuple[tuple[int, int], tuple[float, float]]:
    """Returns how many labels of which size: as asked, else as many, or as large, as fit."""
    size = _label("label", given["label"], "26x32") if "label" in given else None
    if "grid" not in given:
        size = size or _LABEL
        fits = [int((room + gap) / (side + gap)) for room, side, gap in zip(free, size, gaps, strict=True)]
        return (max(1, fits[0]), max(1, fits[1])), size
    wanted = f"columns and rows with an x between, 1 to {_MOST_PLACES} each, such as 7x8"
    columns, rows = _pair("grid", given["grid"], wanted)
    for count in (columns, rows):
        if count != int(count) or not 1 <= count <= _MOST_PLACES:
            raise BadInput("grid", given["grid"], wanted)
    counts = (int(columns), int(rows))
    if size is None:
        sides = [(room - (n - 1) * gap) / n for room, n, gap in zip(free, counts, gaps, strict=True)]
        if min(sides) < _LEAST:
            raise BadInput("grid", given["grid"], f"few enough for labels of {_LEAST:g} mm and more")
        size = (int(sides[0] * 10) / 10, int(sides[1] * 10) / 10)
    return counts, size


def _margins(paper: tuple[float, float], spans: list[float], precut: bool) -> tuple[float, float]:
    """Returns where the grid begins when nobody says so: in the middle, with room for the note below."""
    left, top = ((most - span) / 2 for most, span in zip(paper, spans, strict=True))
    if not precut and _TOP + spans[1] + _FOOT <= paper[1]:
        top = _TOP
    return max(0.0, left), max(0.0, top)


def _dpi(given: dict[str, str], usual: str) -> int:
    text = given.get("dpi", usual)
    if text not in {str(dpi) for dpi in DPIS}:
        raise BadInput("dpi", text, "one of " + ", ".join(str(dpi) for dpi in DPIS))
    return int(text)


def _label(name: str, text: str, example: str) -> tuple[float, float]:
    width, height = _pair(name, text, _LENGTHS.format(example))
    if not _LEAST <= min(width, height) <= max(width, height) <= _MOST:
        raise BadInput(name, text, f"sides of {_LEAST:g} to {_MOST:g} mm")
    return width, height


def _pair(name: str, text: str, wanted: str) -> tuple[float, float]:
    found = _PAIR.fullmatch(text.replace(",", "."))
    if not found:
        raise BadInput(name, text, wanted)
    return float(found[1]), float(found[2])


def _dots(millimetres: float, dpi: int) -> int:
    return round(millimetres * dpi / 25.4)


def _words(size: tuple[float, float]) -> str:
    return f"{size[0]:g} x {size[1]:g} mm"
