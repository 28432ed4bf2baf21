"""Who is who among units that got mixed up, as far as the tests tell: now, and after a result to come."""

from ..infer.figures import WHOLE
from ..messages import all_of
from ..messages import any_of
from ..messages import message
from ..messages import percent
from ..messages import sentences
from ..state.job import Job
from ..words import words
from ..words.words import unit_name
from . import mixups
from . import tests_so_far
from . import ways
from .identity_assignments import traced

# So many that a part may be are named.
_FEW = 4
# Results that settle nothing; that who is who stays open needs no words there.
_OPEN = ("reasons-then-likely", "reasons-then-open", "reasons-then-gone", "reasons-then-unlikely")


def chances(result: dict | None, shares: list | None = None) -> dict:
    """Return {body: [(identity, parts per billion)]}, the likeliest first; {} where nothing was told apart.

    `shares` are how likely the ways of the result are, as after a move; left out, as they are now.
    """
    if not result or "ways" not in result:
        return {}
    ways = result["ways"]
    found = {}
    for n, way in enumerate(ways):
        share = way["probability"] if shares is None else shares[n]
        for body, identity in traced(way["assignment"]):
            group = result["alike"].get(identity, [identity])
            sums = found.setdefault(body, {})
            for each in group:
                sums[each] = sums.get(each, 0) + share / len(group)
    told = {}
    for body in found:
        rows = sorted([(-int(found[body][each] + 0.5), each) for each in found[body]])
        told[body] = [(each, -less) for less, each in rows if less]
    return told


def known(job: Job, result: dict | None) -> dict:
    """Return {body: identity} of those that the tests make as sure as a verdict has to be."""
    found = {}
    told = chances(result)
    for body in sorted(told):
        identity, chance = told[body][0]
        if chance >= job.confidence_ppb:
            found[body] = identity
    return found


def bad_chance(result: dict, identity: str) -> int:
    """Return how likely a unit is bad whose part is not known, in parts per billion."""
    group = result["alike"].get(identity, [identity])
    chances = result.get("identities", {})
    total = 0
    for each in group:
        total += chances.get(each, 0)
    return total // len(group)


def job_view(job: Job, result: dict | None) -> list[dict]:
    """Return the mix-ups of a job that are not settled, in words."""
    shown = []
    for entry in ways.open_sets(job):
        settling = mixups.settling_words(job, entry)
        names = [unit_name(job.unit(each)) for each in entry["open"]]
        shown.append(
            {
                "at": entry["at"],
                "count": entry["count"],
                "sentence": message("evidence-mixed", units=all_of(names)),
                "scan_words": settling["scan"],
                "test_words": settling["test"],
                "who_words": told(job, result, entry),
            }
        )
    return shown


def told(job: Job, result: dict | None, entry: dict):
    """Return what is known by now of the bodies of one mix-up, as sentences; "" without a test."""
    said = []
    found = chances(result)
    for body in sorted(entry["bodies"], key=lambda each: (job.unit(each).code, each)):
        rows = found.get(body)
        if not rows or not job.unit(body).is_labelled():
            continue
        identity, chance = rows[0]
        name = unit_name(job.unit(body))
        if chance >= job.confidence_ppb:
            share = percent(min(chance, WHOLE))
            said.append(message("evidence-who-is", unit=name, was=was(job, identity), share=share))
        else:
            others = [was(job, each) for each, _ in rows]
            few = (
                any_of(others) if len(others) <= _FEW else message("evidence-who-several", count=len(others))
            )
            said.append(message("evidence-who-may", unit=name, others=few))
    return sentences(said) if said else ""


def after(job: Job, result: dict, outcome: dict):
    """Return who would be who after a result of a move, of one body: of the suspect, where that is sure.

    "" where the result leaves open more than this.
    """
    found = chances(result, outcome["ways"])
    rows = []
    for body in sorted(found):
        identity, chance = found[body][0]
        if chance >= job.confidence_ppb:
            rows.append(
                (0 if tests_so_far.faulted_places(job, identity) else 1, job.unit(body).code, body, identity)
            )
    if rows:
        _, _, body, identity = sorted(rows)[0]
        return message("evidence-who-then", unit=unit_name(job.unit(body)), was=was(job, identity))
    return "" if outcome["then"]["msg"] in _OPEN else message("evidence-who-open")


def was(job: Job, identity: str) -> dict:
    """Return what a unit was called before it got mixed up: by its place, else by its label."""
    unit = job.unit(identity)
    if unit.pulled_from and job.position(unit.pulled_from):
        return message("evidence-who-from", position=words.position_name(job, unit.pulled_from))
    return unit_name(unit)
