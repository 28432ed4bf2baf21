"""What a scanned or typed label means at the step the job is at: go on, or stop, with both names."""

from .. import phrases
from ..facts.draft import draft
from ..facts.mixups import in_hand
from ..state import own_label
from ..state.job import Job
from ..state.state import MIXED
from ..state.unit import Unit
from ..words import words
from ..words.words import unit_name


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
        return _stop(read, "This label is void",
                     "{} was taken out of use.".format(read["shown"]),
                     "Take a fresh label.", [])  # fmt: skip
    if unit and state.units[unit]["place"] == MIXED:
        return _told_apart(state, read, how)
    handler = _AT.get(expects.get("do", ""))
    if handler is None or job is None:
        if unit:
            read["sentence"] = "{} is {}.".format(read["shown"], words.place_words(Unit(state, unit, job)))
        else:
            read["sentence"] = "{} is a fresh label.".format(read["shown"])
        return read
    return handler(job, expects, read, how)


def _told_apart(state, read, how) -> dict:
    """The old label of one that got mixed up is still on: the part in the hand is that one."""
    entry = state.mixed[state.units[read["unit"]]["mixed"]]
    if in_hand(state, entry) is None:
        return _stop(
            read,
            "This label got mixed up",
            "{} is {}, and has a new label by now.".format(
                read["shown"], words.place_words(Unit(state, read["unit"]))
            ),
            "Scan the new label instead.",
            [],
        )
    read["events"] = [draft("unit_seen", unit=read["unit"], place="out", position="", how=how)]
    read["sentence"] = "This is {}.".format(read["shown"])
    if len(entry["open"]) == 2:
        read["sentence"] += " The other one is known now too."
    return read


def _at_mixed(job: Job, expects, read, how) -> dict:
    """A fresh label goes on the next of those that got mixed up."""
    if read["unit"]:
        return _on_another(job, read, _on_another_title(job), "Take a fresh label for the next one.", [])
    read["events"] = [draft("unit_labelled", unit=expects["unit"], code=read["code"], how=how)]
    read["sentence"] = "One of those that got mixed up is now {}.".format(read["shown"])
    return read


def _at_pull(job: Job, expects, read, how) -> dict:
    """The unit just pulled: a fresh label goes on it, or its own label shows that it is the one."""
    unit, position = expects["unit"], expects["position"]
    known = job.unit(unit)
    where = words.position_name(job, position)
    out = job.fitted_at(position) != unit
    if known.is_labelled():
        if read["unit"] == unit:
            read["events"] = [draft("unit_pulled", unit=unit, position=position, how=how)]
            read["sentence"] = "{} is out of {}.".format(read["shown"], where)
            return read
        return _wrong(job, read, unit, position, how)
    if read["unit"]:
        title = "STOP: this label is on another " + job.sort.unit
        more = "Take a fresh label for the {} from {}.".format(job.sort.unit, where)
        return _on_another(job, read, title, more, [_stopped(position, unit, read, how)])
    if not out:
        read["events"].append(draft("unit_pulled", unit=unit, position=position, how="tapped"))
    read["events"].append(draft("unit_labelled", unit=unit, code=read["code"], how=how))
    read["sentence"] = "The {} from {} is now {}.".format(job.sort.unit, where, read["shown"])
    return read


def _at_fit(job: Job, expects, read, how) -> dict:
    unit, position = expects["unit"], expects["position"]
    if read["unit"] != unit:
        return _wrong(job, read, unit, position, how)
    read["events"] = [
        draft("unit_fitted", unit=unit, position=position, how=how, override=_reason_given(job))
    ]
    read["sentence"] = "{} belongs at {}.".format(read["shown"], words.position_name(job, position))
    return read


def _reason_given(job) -> str:
    """Return why another part number is fitted, as said when the replacement began; "" without one."""
    return job.move["reason"] if job.move and job.move["move"] == "replace" else ""


def _at_take(job: Job, expects, read, how) -> dict:
    unit = expects["unit"]
    if read["unit"] != unit:
        return _wrong(job, read, unit, expects["position"], how)
    read["events"] = [draft("unit_moved", unit=unit, place="out", how=how, note="")]
    return read


def _at_where_to(job: Job, expects, read, how) -> dict:
    """Only proves which unit is in the hand; the place is said next."""
    if read["unit"] != expects["unit"]:
        return _wrong(job, read, expects["unit"], "", how)
    read["sentence"] = "This is {}.".format(read["shown"])
    return read


def _at_new(job: Job, expects, read, how) -> dict:
    """A new unit wants a label that no unit has."""
    if read["unit"]:
        return _on_another(job, read, _on_another_title(job), "Take a fresh label.", [])
    read["sentence"] = "{} is a fresh label.".format(read["shown"])
    return read


def _on_another_title(job: Job) -> str:
    return "This label is on another " + job.sort.unit


def _on_another(job: Job, read, title: str, more: str, events: list) -> dict:
    """The stop where a fresh label is wanted and this one is on a sensor; it says where that is."""
    where = words.place_words(job.unit(read["unit"]))
    return _stop(read, title, "{} is {}.".format(read["shown"], where), more, events)


def _wrong(job: Job, read, unit, position, how) -> dict:
    """The stop itself: what it is, what belongs here, where that one is, what to do."""
    belongs = unit_name(job.unit(unit))
    if read["unit"] is None:
        title = "STOP: no {} has this label yet".format(job.sort.unit)
        more = "Look for the {} labelled {}; it is {}.".format(
            job.sort.unit, belongs, words.place_words(job.unit(unit))
        )
    else:
        title = "STOP: wrong {} in your hand".format(job.sort.unit)
        more = "{} {}. Put it down and pick up {}, which {}.".format(
            read["shown"],
            _whereabouts(job, read["unit"], "came from"),
            belongs,
            _whereabouts(job, unit, "you pulled from"),
        )
    return _stop(
        read,
        title,
        "This is {}. {} belongs here.".format(read["shown"], phrases.sentence_case(belongs)),
        more,
        [_stopped(position, unit, read, how)],
    )


def _whereabouts(job: Job, unit, pulled) -> str:
    """Return where a unit is or, of one that lies about on this job, where it was pulled."""
    known = job.unit(unit)
    if known.is_in_hand_here() and known.pulled_from and not known.is_disputed():
        return "{} {}".format(pulled, words.position_name(job, known.pulled_from))
    return "is " + words.place_words(known)


def _stopped(position, unit, read, how) -> dict:
    return draft("mixup_stopped", position=position, expected=unit, seen=read["code"], how=how)


def _stop(read, title, sentence, more, events) -> dict:
    return {
        "outcome": "stop",
        "shown": read["shown"],
        "title": title,
        "sentence": sentence,
        "more": more,
        "events": events,
    }


_AT = {
    "pull": _at_pull,
    "fit": _at_fit,
    "take": _at_take,
    "where_to": _at_where_to,
    "new": _at_new,
    "mixed": _at_mixed,
}
