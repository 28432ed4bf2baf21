"""The page of what the jobs teach: sections of rows, every sentence a message.

{"title", "words", "spans": [{"id", "words", "on"}], "summary": [sentences], "sections": [section], "jobs":
[[id, name, closed at]]}. A section is {"id", "title", "note", "rows", "board"}; a row {"words", "figure",
"note", "jobs": [numbers in the list of jobs], "band"}. A band is {"low", "value", "high", "mark", "most"},
whole numbers on one scale from 0 to `most`; `mark` is what the value stands beside. `board` has the
positions of the vehicle with what was found at each and the jobs behind it, as the app draws a board; None
where nothing is drawn.
"""

from collections.abc import Iterable
from typing import Any

from server.core.evidence.assumptions import exact
from server.core.infer.variations import CLASSES
from server.core.messages import message
from server.core.messages import sentences
from server.core.parts import sorts
from server.core.parts.layouts import MOST_POSITIONS
from server.core.returns.about import about
from server.lessons.composed import PRIOR_JOBS
from server.lessons.rows import as_sentences
from server.lessons.rows import band_of
from server.lessons.rows import in_minutes
from server.lessons.rows import in_part
from server.lessons.rows import percent
from server.lessons.rows import row_of
from server.lessons.rows import share_of
from server.lessons.rows import tenths
from server.lessons.rows import timed_row
from server.lessons.spans import SPANS
from server.lessons.work import COMEBACK_DAYS
from server.lessons.work import ENOUGH
from server.lessons.work import tells_enough

_LATER = "evidence-rate-"  # the messages that say what a rate is the chance of


def page(found: dict[str, Any], span: str) -> dict[str, Any]:
    """Returns the page of figures over a span."""
    sections = [
        _reliability(found),
        _comebacks(found),
        _causes(found),
        _rates(found),
        _minutes(found),
        *_reaches(found),
        _parts(found),
        _returns(found),
        _left_out(found),
    ]
    numbers = {job: number for number, job in enumerate(found["names"])}
    for section in sections:
        for row in section["rows"]:
            row["jobs"] = [numbers[job] for job in row["jobs"]]
        for position in section["board"]["positions"] if section["board"] else ():
            position["jobs"] = [numbers[job] for job in position["jobs"]]
    has_bands = any(row["band"] for section in sections for row in section["rows"])
    words = {name: message(f"lessons-{name}") for name in ("csv", "json", "print", "behind")}
    return {
        "title": message("lessons-title"),
        "words": words | {"axis": message("lessons-axis") if has_bands else ""},
        "spans": [
            {"id": each, "words": message(f"lessons-span-{each}"), "on": each == span} for each in SPANS
        ],
        "summary": _summary(found),
        "sections": [section for section in sections if section["rows"]],
        "jobs": [[job, name, closed] for job, (name, closed) in found["names"].items()],
    }


def rate_rows(found: dict[str, Any]) -> list[dict[str, Any]]:
    """Returns the rates as rows, each beside its default."""
    rows = []
    for rate in found["rates"]:
        said = message(_LATER + rate["id"].replace("_", "-"), **_sort_words())
        note = [message("lessons-default", default=exact(rate["default_ppm"]))]
        value, band = _count_of(rate), None
        if tells_enough(rate):
            bounds = {"low": percent(rate["low_ppm"]), "high": percent(rate["high_ppm"])}
            note += [value, message("lessons-between", **bounds, yards=len(found["yards"]))]
            value = percent(rate["value_ppm"])
            band = band_of(rate["low_ppm"], rate["value_ppm"], rate["high_ppm"], rate["default_ppm"])
        rows.append(row_of(said, value, sentences(as_sentences(note)), _behind(found, rate["id"]), band))
    return rows


def _behind(found: dict[str, Any], rate: str) -> list[str]:
    """Returns the jobs behind a rate: those with a cause of the class, or those with such a reading."""
    if rate not in CLASSES:
        return list(found["behind_rates"].get(rate, []))
    return _once(job for kind, _, job in found["causes"] if kind == rate)


def _once(jobs: Iterable[str]) -> list[str]:
    """Returns jobs in order, each once: one may have two causes, or come back twice."""
    return list(dict.fromkeys(jobs))


def _summary(found: dict[str, Any]) -> list[dict]:
    said = [message("lessons-none" if found["since"] else "lessons-none-yet")]
    if found["closed"]:
        counts = {"counted": len(found["counted"]), "proven": len(found["proven"])}
        said = [message("lessons-summary", closed=found["closed"], **counts)]
    if found["waiting"]:
        said.append(message("lessons-waiting", count=found["waiting"]))
    return said


def _reliability(found: dict[str, Any]) -> dict[str, Any]:
    rows = []
    for each in found["reliability"]:
        note, band = message("lessons-expected", expected=in_part(each["expected"])), None
        if each["number"] >= ENOUGH:
            allowed = message("lessons-chance-allows", low=each["low"], high=each["high"])
            note = sentences([note, allowed])
            band = band_of(
                each["low"], each["right"], each["high"], (each["expected"] + 50) // 100, each["number"]
            )
        figure = share_of(each["right"], each["number"])
        rows.append(row_of(_claimed(each["start"], each["end"]), figure, note, each["jobs"], band))
    return _section("reliability", rows)


def _claimed(start: int, end: int) -> dict:
    first, last = exact(start * 1000), exact(end * 1000)
    if not start:
        return message("lessons-claimed-under", end=last)
    if end > 1000:
        return message("lessons-claimed-over", start=first)
    return message("lessons-claimed", start=first, end=last)


def _comebacks(found: dict[str, Any]) -> dict[str, Any]:
    repaired, came = len(found["repaired"]), found["comebacks"]
    jobs = _once(job for pair in came for job in pair if job in found["names"])
    still_open = len(found["comebacks_open"])
    note = message("lessons-came-back-open", count=still_open) if still_open else ""
    figure = share_of(len(came), repaired)
    rows = [row_of(message("lessons-came-back"), figure, note, jobs)] if repaired else []
    return _section("comebacks", rows, days=COMEBACK_DAYS)


def _causes(found: dict[str, Any]) -> dict[str, Any]:
    rows: list[dict[str, Any]] = []
    total, of_jobs = len(found["causes"]), len({job for _, _, job in found["causes"]})
    for kind in CLASSES:
        jobs = [job for known, _, job in found["causes"] if known == kind]
        if jobs:
            share = share_of(len(jobs), total, of_jobs)
            rows.append(row_of(message("lessons-class", what=kind), share, "", _once(jobs)))
    board = []
    for index, (identity, called, edge) in enumerate(found["board"]):
        jobs = [job for _, place, job in found["causes"] if place == identity]
        word = message("lessons-causes-count", count=len(jobs))
        board.append({"id": identity, "name": called, "edge": edge, "index": index,
                      "mark": "fault" if jobs else "clean", "word": word, "unit": None,
                      "jobs": _once(jobs)})  # fmt: skip
    edges = {each["edge"] for each in board}
    kind = next(iter(edges)) if len(edges) == 1 and edges <= {"rear", "front"} else "around"
    drawn = {"kind": kind, "positions": board} if rows and len(board) <= MOST_POSITIONS else None
    return _section("causes", rows) | {"board": drawn}


def _rates(found: dict[str, Any]) -> dict[str, Any]:
    rows = rate_rows(found) if found["counted"] or found["yards"] else []
    return _section(
        "rates", rows, message("lessons-rates-bar", yards=len(found["yards"])), jobs=int(PRIOR_JOBS)
    )


def _minutes(found: dict[str, Any]) -> dict[str, Any]:
    rows = []
    work = sorted(found["work"], key=lambda each: each[1])
    if work:
        took, plan = (sorted(each[n] for each in work)[len(work) // 2] for n in (1, 2))
        note = message("lessons-work-plan-alone", plan=tenths(plan))
        jobs = [each[0] for each in work]
        figure, band = message("lessons-jobs", count=len(work)), None
        if len(work) >= ENOUGH:
            note = message("lessons-work-plan", plan=tenths(plan), count=len(work))
            figure = in_minutes(took)
            low, high = work[len(work) // 4][1], work[len(work) * 3 // 4][1]
            band = band_of(low, took, high, plan)
        rows.append(row_of(message("lessons-work"), figure, note, jobs, band))
    for each in found["minutes"]:
        rows.append(timed_row(message("lessons-action", what=each["id"]), each, each["default_x100"]))
    return _section("minutes", rows, message("lessons-minutes-bar"))


def _reaches(found: dict[str, Any]) -> list[dict[str, Any]]:
    called = {identity: name for identity, name, _ in found["positions"]}
    layouts = {each["layout"] for each in found["reach"]}
    by_position = []
    for each in sorted(found["reach"], key=lambda each: -each["count"]):
        name = called.get(each["position"], each["position"])
        where = _layout_name(each["layout"]) if len(layouts) > 1 else ""
        by_position.append(timed_row(name, each, each["plan_x100"], where))
    by_model = [timed_row(each["name"], each, each["plan_x100"]) for each in found["models"]]
    by_model.sort(key=lambda row: -row["count"])
    enough = [row for row in by_model if row["count"] >= ENOUGH]
    return [_section("reach", by_position), _section("models", enough)]


def _layout_name(layout: str) -> object:
    names = {each["id"]: each["name"] for each in sorts.all_layouts()}
    return names.get(layout, layout)


def _parts(found: dict[str, Any]) -> dict[str, Any]:
    rows = []
    for name, place, note in (("bought", 1, ""), ("saved", 2, message("lessons-saved-note"))):
        jobs = [each[0] for each in found["parts"] if each[place]]
        count = sum(each[place] for each in found["parts"])
        if count:
            figure = message("lessons-pieces", count=count)
            rows.append(row_of(message(f"lessons-{name}"), figure, note, jobs))
    return _section("parts", rows)


def _returns(found: dict[str, Any]) -> dict[str, Any]:
    rows = []
    for decision, reason, count, jobs in found["returns"]:
        said = message("lessons-decision", decision=decision)
        if reason:
            said = message("lessons-decision-for", decision=said, reason=about(reason))
        known = [job for job in jobs if job in found["names"]]
        rows.append(row_of(said, message("lessons-pieces", count=count), "", known))
    return _section("returns", rows)


def _left_out(found: dict[str, Any]) -> dict[str, Any]:
    rows = [
        row_of(message("lessons-why", why=why), message("lessons-jobs", count=len(jobs)), "", jobs)
        for why, jobs in sorted(found["left_out"].items())
    ]
    if found["times_left_out"]:
        times = message("lessons-times", count=found["times_left_out"])
        rows.append(row_of(message("lessons-times-left-out"), times, "", found["times_left_out_of"]))
    return _section("left-out", rows)


def _section(
    name: str, rows: list[dict[str, Any]], of_bars: object | None = None, **args: int
) -> dict[str, Any]:
    """Returns a section; `of_bars` is what its note says of bars besides, where any is drawn."""
    noted = {"reliability", "comebacks", "causes", "rates", "minutes", "left-out"}
    note = message(f"lessons-{name}-note", **args) if name in noted else ""
    if of_bars and any(row["band"] for row in rows):
        note = sentences([note, of_bars])
    return {"id": name, "title": message(f"lessons-{name}"), "note": note, "rows": rows, "board": None}


def _count_of(rate: dict[str, Any]) -> dict:
    if rate["id"] in CLASSES:
        return message("lessons-found", count=in_part(rate["hits_x100"]))
    return message("lessons-readings", count=rate["hits_x100"] // 100, readings=rate["tries"])


def _sort_words() -> dict:
    sort = sorts.PARKING_SENSOR
    return {"sort": sort.identity, "blocked": sort.obstruction.words}
