"""The history of a job: each entry in its sentence, where it shows, and what can be done about it."""

from ..facts.corrections import KINDS_OF_CORRECTION
from ..facts.corrections import target_of
from ..facts.draft import draft
from ..facts.kinds import KINDS
from ..facts.whose import ROLE
from ..facts.whose import phone_of
from ..messages import message
from ..parts.layouts import OWN
from ..parts.sort import Sort
from ..state.job import Job
from ..words import people
from ..words import sentences
from ..words.noted import noted
from .correctable import known_corrections
from .correctable import may_be_put_right

# by whether a newer version of the app recorded the entry
_NOT_UNDERSTOOD = {True: "views-job-entry-newer", False: "views-job-entry-unknown"}
_NUMBERED = {"test_run": "test", "circuit_measured": "reading", "circuit_repaired": "repair"}


def history(job: Job) -> list[dict]:
    """Return the entries of a job, the last one first."""
    shown, counted, corrections = [], {}, _corrections(job)

    def said(kind: str, data: dict) -> dict:
        return sentences.sentence(job, kind, data)

    for entry in job.history:
        counts = entry["understood"] and entry["withdrawn"] is None
        about = _about(job, entry, counted) if counts else []
        known = corrections.get("{}:{}".format(entry["device"], entry["seq"]), [])
        shown.append(entry_shown(job.state, entry, about, job.sort, said, known))
    shown.reverse()
    return shown


def _corrections(job: Job) -> dict:
    """Return of each entry that was corrected which entries did it."""
    found = {}
    for entry in job.history:
        if entry["kind"] in KINDS_OF_CORRECTION and entry["understood"]:
            by = "{}:{}".format(entry["device"], entry["seq"])
            found.setdefault(target_of(entry["data"]), []).append(by)
    return found


def entry_shown(state, entry: dict, about: list[str], sort: Sort, said, corrections: list[str]) -> dict:
    """Return an entry as `HistoryEntry` has it; `said(kind, data)` is the sentence of an understood one.

    `corrections` are all of that entry, by which one that was taken back is brought back.
    """
    known = entry["understood"]
    shown = {
        "device": entry["device"],
        "seq": entry["seq"],
        "at": entry["at"],
        "actor": entry["actor"],
        "kind": entry["kind"],
        "about": about,
        "sentence": said(entry["kind"], entry["data"]) if known else message(_NOT_UNDERSTOOD[entry["newer"]]),
        "undone": _undone(sort, entry["withdrawn"]),
        "righted": _righted(entry, said) if known else None,
        "may_right": may_be_put_right(entry),
        "over": known_corrections(entry),
        "may_undo": known
        and entry["withdrawn"] is None
        and entry["kind"] not in ("job_opened",) + KINDS_OF_CORRECTION,
    }
    if known and entry["withdrawn"] and corrections:
        shown["back"] = [_brought_back(entry, corrections)]
    phone = phone_of(state, entry["device"], entry["seq"])
    if phone:
        _tell_whose(state, entry, phone, shown)
    return shown


def _brought_back(entry: dict, corrections: list[str]) -> dict:
    """Return the draft by which an entry counts again as it stood before somebody took it back."""
    right = {"kind": entry["kind"], "data": entry["data"]}
    named = {"device": entry["device"], "seq": entry["seq"], "reason": "slip", "over": corrections}
    return draft("put_right", entry=right, **named)


def _tell_whose(state, entry: dict, phone: dict, shown: dict) -> None:
    """Say of an entry whose phone it is of, where its name is another, and what is wrong with that."""
    actor, name, flags = entry["actor"], phone["name"], []
    if actor != name:
        shown["who"] = people.on_the_phone_of(phone, actor)
        if people.how_said(phone, actor) == "said":
            flags.append(message("views-history-not-said", actor=actor))
    identity = "{}:{}".format(entry["device"], entry["seq"])
    if [each for each in state.conflicts if each["about"] == ROLE and each["event"] == identity]:
        flags.append(message("views-history-role", role=phone["role"]))
    if flags:
        shown["flags"] = flags


def _about(job: Job, entry: dict, counted: dict) -> list[str]:
    """Return where an entry that counts shows, as `views.d.ts` has it.

    A test shows as a whole, and so not at each of its positions; `counted` is how many there are of each
    numbered kind before the entry, and is counted on.
    """
    data, numbered = entry["data"], _NUMBERED.get(entry["kind"])
    if numbered:
        counted[numbered] = counted.get(numbered, 0) + 1
        number = ["{}:{}".format(numbered, counted[numbered])]
        if numbered == "test":
            return number
    positions, units = KINDS[entry["kind"]].names(data)
    about = ["position:" + each for each in positions if each]
    if entry["kind"] == "circuit_repaired" and data["cause"].startswith("circuit:"):
        about.append("position:" + data["cause"].partition(":")[2])
    if entry["kind"] == "job_opened":
        about.append("vehicle:" + data["vehicle"]["id"])
        about.extend(["position:" + each["id"] for each in data["positions"] if each["id"].startswith(OWN)])
    about.extend(["unit:" + job.state.now(each) for each in units if each])
    if entry["kind"] == "photo_taken":
        return ["photo:" + data["sha256"]] + about
    return number + about if numbered else about


def _undone(sort: Sort, correction: dict | None) -> dict | None:
    """Return who took an entry back and why, in words; None where nobody did."""
    if correction is None:
        return None
    return {"actor": correction["actor"], "reason": noted(sort, correction["reason"])}


def _righted(entry: dict, said) -> dict | None:
    """Return who put an entry right and what it said before, in words; None where nobody did."""
    if "righted" not in entry or entry["said"] == entry["data"]:
        return None
    return {"actor": entry["righted"]["actor"], "said": said(entry["kind"], entry["said"])}
