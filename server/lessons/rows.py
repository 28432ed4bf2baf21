"""The rows of the page, and how the figures in them are written: every one a message."""

from typing import Any

from server.core.evidence.assumptions import exact
from server.core.messages import decimal
from server.core.messages import message
from server.core.messages import sentences
from server.lessons.work import ENOUGH


def row_of(
    said: object, figure: object, note: object, jobs: list[str], band: dict | None = None
) -> dict[str, Any]:
    """Returns a row of the page, {"words", "figure", "note", "jobs", "band"}; `jobs` are those behind it."""
    return {"words": said, "figure": figure, "note": note, "jobs": jobs, "band": band}


def band_of(low: int, value: int, high: int, mark: int, most: int = 0) -> dict[str, int]:
    """Returns a band; its scale ends a little beyond what stands on it where nothing else ends it."""
    end = most or max(low, value, high, mark) * 11 // 10 + 1
    return {"low": low, "value": value, "high": high, "mark": mark, "most": end}


def timed_row(said: object, spread: dict[str, Any], plan: int, where: object = "") -> dict[str, Any]:
    """Returns a row of times beside what the plan reckons for such a one."""
    cut = [message("lessons-cut", count=spread["cut"])] if spread["cut"] else []
    enough = len(spread["jobs"]) >= ENOUGH
    beside = message("lessons-minutes-plan-alone", plan=tenths(plan))  # its count is the figure
    if enough:
        beside = message("lessons-minutes-plan", plan=tenths(plan), count=spread["count"])
    figure = in_minutes(spread["median_x100"]) if enough else message("lessons-times", count=spread["count"])
    band = band_of(spread["low_x100"], spread["median_x100"], spread["high_x100"], plan) if enough else None
    told = [each for each in [where, beside, *cut] if each]
    row = row_of(said, figure, sentences(as_sentences(told)), spread["jobs"], band)
    return row | {"count": spread["count"]}


def share_of(part: int, whole: int, jobs: int | None = None) -> dict:
    """Returns a part of a whole: as a percentage too where there are enough jobs, each one of the whole."""
    if (whole if jobs is None else jobs) < ENOUGH:
        return message("lessons-of", right=part, count=whole)
    return message("lessons-share-of", share=percent(part * 1_000_000 // whole), right=part, count=whole)


def in_part(hundredths: int) -> dict:
    """Returns a count that may be in part: a whole one has no decimal."""
    rounded = (hundredths + 5) // 10
    return decimal(rounded, 1) if rounded % 10 else decimal(rounded // 10, 0)


def as_sentences(said: list) -> list:
    """Returns messages as sentences; what is one already stays."""
    return [each if _ends(each) else message("lessons-sentence", said=each) for each in said]


def _ends(said: object) -> bool:
    return isinstance(said, dict) and said.get("msg") in {"lessons-between", "lessons-cut"}


def percent(ppm: int) -> dict:
    """Returns parts per million as a percentage of two figures that tell."""
    for places, least in ((0, 100_000), (1, 10_000), (2, 1_000), (3, 100)):
        if ppm >= least:
            step = 10 ** (4 - places)
            return exact((ppm + step // 2) // step * step)
    return exact(ppm)


def tenths(hundredths: int) -> dict:
    """Returns hundredths as a figure with one place."""
    return decimal((hundredths + 5) // 10, 1)


def in_minutes(hundredths: int) -> dict:
    """Returns hundredths of a minute as minutes with one place, and their name."""
    return message("lessons-minutes-of", minutes=tenths(hundredths))
