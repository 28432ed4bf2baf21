"""What was recorded of a unit outside any job: a spare put into stock, its label, where it went.

Each entry is shown and entered anew as those of a job are. What a correction changes is told of the unit,
and of the jobs that had to do with it where their verdict turns.
"""

from ..codes import labels
from ..evidence.conclusions import Conclusions
from ..facts.corrections import target_of
from ..facts.kind import BENCH
from ..facts.kind import BOTH
from ..facts.kinds import KINDS
from ..log import envelope
from ..messages import message
from ..messages import sentences as joined
from ..state.job import known_job
from ..state.unit import Unit
from ..words import sentences
from ..words import words
from . import correcting
from .history import entry_shown


def entries_view(fold, identity: str) -> dict:
    """Return {"unit", "shown", "jobs", "history"}: the entries newest first, as `HistoryEntry` has them."""
    unit = Unit(fold.state, identity)
    about = ["unit:" + unit.id]

    def said(kind: str, data: dict) -> dict:
        return sentences.sentence_beside(unit, kind, data)

    history = [
        entry_shown(fold.state, entry, about, unit.sort, said, fold.corrections.standing(entry))
        for entry in fold.beside(unit.id)
        if _at_bench(entry)
    ]
    history.reverse()
    return {
        "unit": unit.id,
        "shown": labels.shown(unit.code),
        "jobs": [
            {"id": job, "title": fold.state.vehicles[fold.state.job_line(job)["vehicle"]]["name"]}
            for job in unit["jobs"]
        ],
        "history": history,
    }


def find(fold, device: str, seq: int) -> dict | None:
    """Return an entry outside any job by its identity, or None."""
    event = fold.find("{}:{}".format(device, seq))
    for identity in _named(fold, event) if event else []:
        for entry in fold.beside(identity):
            if entry["device"] == device and entry["seq"] == seq:
                return entry
    return None


def changes(fold, event: dict, concluded) -> dict:
    """Return {"sentence", "unfit"}: what the draft of a correction makes of the unit, what no longer fits.

    `concluded` gives what is concluded of a job as it stands.
    """
    target = fold.find(target_of(event["data"]))
    identity = _named(fold, target)[0]
    before, after = fold.state, fold.with_right(target_of(event["data"]), event["data"]["entry"])
    told = [_of_unit(Unit(before, identity), Unit(after, identity))]
    for job in before.units[identity]["jobs"] if identity in before.units else []:
        then, now = known_job(before, job), known_job(after, job)
        sentence = correcting.verdict_changes(then, now, concluded(then), Conclusions().concluded(now))
        if sentence["msg"] == "views-correct-verdict":
            told.append(sentence)
    return {"sentence": joined(told), "unfit": correcting.unfit(before, after, fold.find)}


def _named(fold, event: dict) -> list[str]:
    """Return the units that an entry outside any job names; of one that is not understood, none."""
    kind = KINDS.get(event["kind"])
    if not kind or event["job"] or envelope.is_newer(event) or kind.problem(event["data"]):
        return []
    return [fold.state.now(each) for each in kind.names(event["data"])[1] if each]


def _at_bench(entry: dict) -> bool:
    """Tell whether the bench records such entries: what the counter decides is corrected there."""
    return KINDS[entry["kind"]].role in (BENCH, BOTH)


def _of_unit(before: Unit, after: Unit) -> dict:
    """Return what is on record of the unit until now and afterwards, in one sentence."""
    was, now = _facts(before), _facts(after)
    if was == now:
        return message("views-correct-unit-stays", now=now)
    return message("views-correct-unit", before=was, now=now)


def _facts(unit: Unit) -> dict:
    if not unit.is_on_record():
        return message("views-correct-unit-none")
    return message(
        "views-correct-unit-is",
        unit=words.unit_name(unit),
        part=unit.part,
        serial=unit["serial"],
        numbers="both"
        if unit.part and unit["serial"]
        else "part"
        if unit.part
        else "serial"
        if unit["serial"]
        else "none",
        where=words.place_words(unit),
    )
