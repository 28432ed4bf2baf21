"""The parts counter: what a scanned unit is, what is proposed for it and why, and the facts to record.

The clerk decides; a decision against the proposal takes a reason. Nothing here records: the answer
carries the drafts for each decision.
"""

from .. import returns
from ..codes import labels
from ..codes.numbers import plain
from ..facts.draft import draft
from ..facts.returns import open_return
from ..guide.step import action
from ..log import canon
from ..messages import message
from ..parts import sorts
from ..returns import evidence
from ..returns.keys import keys
from ..returns.part import is_pictured
from ..returns.photos import of_itself
from ..returns.photos import pictures
from ..state import own_label
from ..state.job import Job
from ..state.job import known_job
from ..state.unit import Unit
from ..words import words

# what a clerk may give as a reason with one tap, in place of typing one
REASONS = ("views-counter-by-hand", "views-counter-agreed", "views-counter-record-later")
DECISIONS = ("accept", "hold", "refuse")
_NOTHING_READ = {"part": "", "serial": "", "compared": ""}


def read_label(state, text: str, host: str) -> dict:
    """Return what a label text names: a unit on record or, for a label that has none, an id for it.

    {"outcome": "unit", "unit", "code", "shown", "elsewhere"}, or what `labels.parse` says of a text
    that is no label.
    """
    said = own_label.read(state, text, host)
    if said["outcome"] == "other_host":
        their_host, code = said["host"], said["code"]
        return {
            "outcome": "unit",
            "unit": _id_of("HTTP://{}/U/{}".format(their_host, code)),
            "code": code + "@" + their_host.lower(),
            "shown": labels.shown(code),
            "elsewhere": their_host.lower(),
        }
    if said["outcome"] != "ours":
        return said
    unit = state.codes.get(said["code"]) or _id_of(said["code"])
    return {"outcome": "unit", "unit": unit, "code": said["code"], "shown": said["shown"], "elsewhere": ""}


def look(state, label: dict, asked: dict, reasoned) -> dict:
    """Return the proposal for a unit: what it is, how each check stands, what a decision records.

    `label` is what `read_label` made, `asked` has how, read, now, window_days, host, record (the faults of
    its record as {device, seq, what: changed|missing|other}, None where nobody checked) and register (what
    other counters of the chain have, as {"asked", "found": [{place, decision, settled, at}]}, None where
    there are none); `reasoned` gives the reasoning over a job.
    """
    unit = state.units.get(label["unit"])
    job = _job_of(state, unit)
    unknown = unit is not None and not unit["jobs"] and _never_on_record(unit)
    read = dict(_NOTHING_READ)
    for field in sorted(asked["read"] or {}):
        read[field] = asked["read"][field]
    waiting = open_return(unit) if unit else None
    how = asked["how"] or (waiting["how"] if waiting else "tapped")
    if waiting:
        for field in sorted(_NOTHING_READ):
            read[field] = read[field] or waiting[field]
    if _is_part_number(read, unit):
        read.update(part=read["part"] or read["serial"], serial="")
    case = {
        "unit": unit,
        "unknown": unknown,
        "code": label["code"],
        "shown": label["shown"],
        "elsewhere": label["elsewhere"],
        "how": how,
        "read": read,
        "job": job,
        "result": reasoned(job.id) if job else None,
        "now": asked["now"],
        "window_days": asked["window_days"],
        "record": asked["record"],
        "register": asked["register"],
        "returns": _past(state, label, unit),
    }
    kept = evidence.of(unit)
    made = returns.checks(state, case)
    proposal = returns.proposed(made)
    against = [each["rule"] for each in made if each["state"] != "pass"]
    return {
        "outcome": "unit",
        "unit": label["unit"],
        "code": label["code"],
        "shown": label["shown"],
        "part": unit["part"] if unit else "",
        "serial": unit["serial"] if unit else "",
        "read": read,
        "from": _origin(unit, job),
        "job": job.id if job else None,
        "proposed": proposal,
        "word": word_of(proposal),
        "headline": _headline(proposal, made),
        "checks": made,
        "against": against,
        "waiting": waiting is not None,
        "record_file": kept["file"] if kept else "",
        "pictured": is_pictured(case),
        "keys": keys(state, unit, label["code"], read["serial"], asked["host"]),
        "photos": _pictures(unit, job, asked["now"]) if unit else [],
        "reasons": [message(each) for each in REASONS],
        "received": _received(label, how, read),
        "decisions": [
            {
                "decision": decision,
                "word": word_of(decision),
                "past": past_of(decision),
                "overrules": decision != proposal,
                "after": _afterwards(decision, label["unit"], how),
                "events": [
                    draft("return_decided", unit=label["unit"], decision=decision, proposed=proposal,
                          reasons=against, overrule="", signed="")
                ],
            }
            for decision in DECISIONS
        ],
    }  # fmt: skip


def _is_part_number(read: dict, unit: dict | None) -> bool:
    """Tell whether what was given as the serial number is the part number, which is printed beside it."""
    given = plain(read["serial"])
    if not given or (unit and plain(unit["serial"]) == given):
        return False
    return given in (plain(read["part"]), plain(unit["part"]) if unit else "")


def word_of(decision: str) -> dict:
    """Return a decision as its button says it."""
    return message("views-counter-decide", decision=decision)


def past_of(decision: str) -> dict:
    """Return a decision as it is told afterwards."""
    return message("views-counter-decided", decision=decision)


def _afterwards(decision: str, unit: str, how: str) -> list[dict]:
    """Return where a unit can go once it is decided; a held one stays at the counter."""
    places = {"accept": ("stock", "scrapped"), "refuse": ("customer",), "hold": ()}
    return [
        action(
            message("views-counter-then", place=place),
            draft("unit_moved", unit=unit, place=place, how=how, note=""),
        )
        for place in places[decision]
    ]


def label_of(state, unit: dict) -> dict:
    """Return what `read_label` would make of the label of a unit that waits; its label is not at hand."""
    code = unit["code"] or (unit["returns"][-1]["code"] if unit["returns"] else "")
    return {
        "outcome": "unit",
        "unit": unit["id"],
        "code": code,
        "shown": shown(code) or words.unit_name(Unit(state, unit["id"])),
        "elsewhere": code.partition("@")[2],
    }


def shown(code: str) -> str:
    """Return a code as people read it; one from elsewhere is kept with its host, as CODE@HOST."""
    return labels.shown(code.partition("@")[0])


def _id_of(text: str) -> str:
    """Return the id of a unit that only its label is known of; the same at every counter."""
    return "u" + canon.sha256_hex("label " + text)[:12]


def _never_on_record(unit) -> bool:
    """Tell whether a unit is known from the counter alone."""
    return not [move for move in unit["moves"] if move["what"] not in ("counter", "disputed")] and bool(
        unit["returns"]
    )


def _job_of(state, unit) -> Job | None:
    """Return the job that a unit is returned from: the last one that tested it, else the last one."""
    if unit is None or not unit["jobs"]:
        return None
    for identity in reversed(unit["jobs"]):
        for test in known_job(state, identity).tests:
            if unit["id"] in test["fitted"].values():
                return known_job(state, identity)
    return known_job(state, unit["jobs"][-1])


def _past(state, label, unit) -> list:
    """Return the returns that are over, or held; also those from before the label was on record."""
    past = list(unit["returns"]) if unit else []
    early = _id_of(label["code"])
    if early != label["unit"] and early in state.units:
        past = state.units[early]["returns"] + past
    return [entry for entry in past if entry["decision"]]


def _origin(unit, job: Job | None):
    """Return where a unit comes from; '' where nobody knows."""
    if unit is None or job is None:
        return ""
    vehicle = job.vehicle["name"]
    if not unit["pulled_from"]:
        return vehicle
    return message(
        "views-counter-origin", position=words.position_name(job, unit["pulled_from"]), vehicle=vehicle
    )


def _headline(proposal, made):
    """Return what a proposal is for in a few words: what was decided before comes before all else."""
    wanted = {"accept": "pass", "hold": "hold", "refuse": "fail"}[proposal]
    titles = [each["title"] for each in made if each["state"] == wanted]
    decided = [each["title"] for each in made if each["state"] == wanted and each["rule"] == "before"]
    return message("views-counter-all-for-it") if proposal == "accept" else (decided + titles)[0]


def _pictures(unit: dict, job: Job | None, now: int) -> list[dict]:
    """Return what to hold beside the part: the unit alone first, then where it sat."""
    alone = of_itself(unit, job)
    found = alone + [photo for photo in pictures(unit, job) if photo not in alone]
    return [_picture(job, photo, photo in alone, now) for photo in found]


def _picture(job: Job | None, photo, alone: bool, now: int) -> dict:
    sort = job.sort if job else sorts.PARKING_SENSOR
    shown = {"sha256": photo["sha256"], "at": photo["at"], "alone": alone}
    shown["words"] = message("views-counter-picture", sort=sort.identity)
    if job and photo["position"]:
        shown["words"] = words.position_name(job, photo["position"])
    elif alone:
        shown["words"] = message("views-counter-labelled", ago=words.ago(photo["at"], now))
    return shown


def _received(label, how, read) -> dict:
    return draft("return_received", unit=label["unit"], how=how, code=label["code"], part=read["part"],
                 serial=read["serial"], compared=read["compared"], note="")  # fmt: skip
