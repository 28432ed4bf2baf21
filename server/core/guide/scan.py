"""What a scanned or typed label means at the step the job is at: go on, or stop, with both names."""

from ..facts.draft import draft
from ..facts.mixups import in_hand
from ..messages import message
from ..messages import sentences
from ..state import own_label
from ..state.job import Job
from ..state.state import MIXED
from ..state.unit import Unit
from ..words import words
from . import spare
from . import stops
from .fixing import own_in_hand
from .fixing import start_replacing


def meaning(state, job: Job | None, expects: dict, text: str, how: str, host: str) -> dict:
    """Return what to do with a label text.

    {"outcome": "ours", "code", "shown", "unit", "sentence", "events"} carries the facts to record;
    {"outcome": "stop", "title", "sentence", "more", "events"} stops the hand;
    "foreign", "mistyped" and "other_host" carry {"title", "sentence"}.
    """
    read = own_label.read(state, text, host)
    if read["outcome"] != "ours":
        return read
    code = read["code"]
    unit = state.codes.get(code)
    read["unit"] = unit
    read["events"] = []
    read["sentence"] = ""
    if unit and code in state.units[unit]["old_codes"]:
        return stops.stop(
            read,
            message("guide-scan-void-title"),
            message("guide-scan-void-text", code=read["shown"]),
            message("guide-scan-take-fresh"),
            [],
        )
    if unit and state.units[unit]["place"] == MIXED:
        return _told_apart(state, read, how)
    handler = _AT.get(expects.get("do", ""))
    if handler is None or job is None:
        if unit:
            read["sentence"] = spare.with_bad(state, unit, _is_at(read, Unit(state, unit, job)))
        else:
            read["sentence"] = message("guide-scan-fresh", code=read["shown"])
        return read
    return handler(job, expects, read, how)


def _told_apart(state, read, how) -> dict:
    """The old label of one that got mixed up is still on: the part in the hand is that one."""
    entry = state.mixed[state.units[read["unit"]]["mixed"]]
    if in_hand(state, entry) is None:
        return stops.stop(
            read,
            message("guide-scan-mixed-title"),
            message(
                "guide-scan-mixed-text",
                code=read["shown"],
                place=words.place_words(Unit(state, read["unit"])),
            ),
            message("guide-scan-mixed-more"),
            [],
        )
    read["events"] = [draft("unit_seen", unit=read["unit"], place="out", position="", how=how)]
    read["sentence"] = message("guide-scan-this", code=read["shown"])
    if len(entry["open"]) == 2:
        read["sentence"] = sentences([read["sentence"], message("guide-scan-mixed-other")])
    return read


def _at_mixed(job: Job, expects, read, how) -> dict:
    """A fresh label goes on the next of those that got mixed up."""
    if read["unit"]:
        return _on_another(job, read, _ON_ANOTHER, message("guide-scan-mixed-take-fresh"), [])
    read["events"] = [draft("unit_labelled", unit=expects["unit"], code=read["code"], how=how)]
    read["sentence"] = message("guide-scan-mixed-labelled", code=read["shown"])
    return read


def _at_true_place(job: Job, expects, read, how) -> dict:
    """A unit in dispute: where is it really?"""
    from . import true_place  # a phone that never meets a contradiction can start without it

    return true_place.at_label(job, expects, read, how)


def _at_pull(job: Job, expects, read, how) -> dict:
    """The unit just pulled: a fresh label goes on it, or its own label shows that it is the one."""
    unit, position = expects["unit"], expects["position"]
    known = job.unit(unit)
    where = words.position_name(job, position)
    out = job.fitted_at(position) != unit
    if known.is_labelled():
        if read["unit"] == unit:
            read["events"] = [draft("unit_pulled", unit=unit, position=position, how=how)]
            read["sentence"] = message("guide-scan-out", code=read["shown"], position=where)
            return read
        return stops.wrong(job, read, unit, position, how)
    if read["unit"]:
        more = _take_another(job, read, where)
        stopped = stops.stopped(position, unit, read, how)
        return _on_another(job, read, "guide-scan-on-another-stop", more, [stopped] if position else [])
    if not out:
        read["events"].append(draft("unit_pulled", unit=unit, position=position, how="tapped"))
    read["events"].append(draft("unit_labelled", unit=unit, code=read["code"], how=how))
    told = "guide-scan-labelled" if position else "guide-scan-labelled-hand"
    read["sentence"] = message(told, position=where, code=read["shown"], sort=job.sort.identity)
    return read


def _take_another(job: Job, read, where) -> dict:
    """Say that what was pulled from `where`, "" for what was at no position, needs its own label."""
    if not where:
        return message("guide-scan-on-another-hand", sort=job.sort.identity)
    sits_here = stops.position_here(job, read["unit"])
    told = "guide-scan-on-another-back" if sits_here else "guide-scan-on-another-more"
    return message(told, position=where, sort=job.sort.identity)


def _at_fit(job: Job, expects, read, how) -> dict:
    unit, position = expects["unit"], expects["position"]
    if read["unit"] != unit:
        return stops.wrong(job, read, unit, position, how)
    read["events"] = [
        draft("unit_fitted", unit=unit, position=position, how=how, override=_reason_given(job), hanging=True)
    ]
    read["sentence"] = message(
        "guide-scan-belongs", code=read["shown"], position=words.position_name(job, position)
    )
    return read


def _reason_given(job) -> str:
    """Return why another part number is fitted, as said when the replacement began; "" without one."""
    return job.move["reason"] if job.move and job.move["move"] == "replace" else ""


def _at_take(job: Job, expects, read, how) -> dict:
    unit = expects["unit"]
    if read["unit"] != unit:
        return stops.wrong(job, read, unit, expects["position"], how)
    was = job.state.units[unit]["place"]
    read["events"] = [draft("unit_moved", unit=unit, place="out", how=how, note="", was=was)]
    return read


def _at_where_to(job: Job, expects, read, how) -> dict:
    """Only proves which unit is in the hand; the place is said next."""
    if read["unit"] != expects["unit"]:
        return stops.wrong(job, read, expects["unit"], "", how)
    read["sentence"] = message("guide-scan-this", code=read["shown"])
    return read


def _at_new(job: Job, expects, read, how) -> dict:
    """A new unit wants a label that no unit has; that of a good one in stock brings that one in."""
    if read["unit"] and expects.get("position"):
        begun = _begun_in_hand(job, expects["position"], read["unit"])
        unfit = None if begun else spare.unfit(job, expects["position"], read["unit"])
        if unfit:
            return stops.stop(
                read,
                message("guide-spare-not-title", sort=job.sort.identity),
                unfit,
                message("guide-spare-not-more"),
                [],
            )
        read["events"] = begun or [start_replacing(expects["position"], read["unit"])]
        read["sentence"] = message(
            "guide-spare-takes", code=read["shown"], position=words.position_name(job, expects["position"])
        )
        return read
    if read["unit"]:
        return _on_another(job, read, _ON_ANOTHER, message("guide-scan-take-fresh"), [])
    read["sentence"] = message("guide-scan-fresh", code=read["shown"])
    return read


def _begun_in_hand(job: Job, position: str, unit: str) -> list:
    """Return the facts by which one in hand takes an empty position, [] where it may not."""
    offered = [each for choice in own_in_hand(job, position) for each in choice["events"]]
    return [each for each in offered if each["data"]["fitted"][position] == unit]


_ON_ANOTHER = "guide-scan-on-another"


def _on_another(job: Job, read, title: str, more, events: list) -> dict:
    """The stop where a fresh label is wanted and this one is on a sensor; it says where that is."""
    said = message(title, sort=job.sort.identity)
    return stops.stop(read, said, _is_at(read, job.unit(read["unit"])), more, events)


def _is_at(read, unit: Unit) -> dict:
    return message("guide-scan-is", code=read["shown"], place=words.place_words(unit))


_AT = {
    "pull": _at_pull,
    "fit": _at_fit,
    "take": _at_take,
    "where_to": _at_where_to,
    "new": _at_new,
    "mixed": _at_mixed,
    "settle": _at_true_place,
}
