"""The next moves in words: title, reason, minutes, and what each possible result would then say."""

from .. import phrases
from ..facts.draft import draft
from ..messages import message
from ..state.job import Job
from ..words import results
from ..words import words
from ..words.words import unit_name
from .fixing import replace_step

_START_WORDS = {
    "retest": "Enter the new test",
    "clean": "Start with cleaning",
    "exchange": "Start the exchange",
    "unplug": "Unplug and test",
    "meter": "Start the checks",
    "replace": "Fit a new {}",
}
_NUMBERS = ("no", "one", "two", "three", "four", "five", "six")


def in_words(job: Job, result: dict) -> list[dict]:
    """Return the candidates of the reasoning as the app shows them, best first."""
    return [_move(job, entry) for entry in result["next"]]


def _move(job: Job, entry) -> dict:
    return {
        "move": entry["move"],
        "title": title_of(job, entry),
        "reason": entry["reason"],
        "why_not": entry.get("why_not", ""),
        "minutes_words": phrases.minutes(entry["minutes_x100"]),
        "start_words": _START_WORDS[entry["move"]].format(job.sort.unit),
        "outlook": results.outlook(job, entry),
        "events": [] if entry["move"] == "replace" else [_start(entry)],
        "form": _form(job, entry),
    }


def _form(job: Job, entry) -> dict | None:
    """Return the step that has to be filled in before a move can start: a replacement's new unit."""
    unit = job.fitted_at(_position(entry)) if entry["move"] == "replace" else None
    return replace_step(job, unit) if unit else None


def title_of(job: Job, entry: dict):
    """Return what to do, in a few words."""
    move = entry["move"]
    if move == "exchange":
        return _exchange(job, entry["fitted"])
    if move == "retest":
        return "Run the self-test again"
    if move == "clean":
        names = [words.position_name(job, position) for position in _cleaned(entry)]
        ending = " and test again" if len(names) == 1 else ", then test again"
        return "Clean " + phrases.listed(names) + ending
    position = words.position_name(job, _position(entry))
    if move == "unplug":
        return "Unplug {} and test".format(position)
    if move == "meter":
        return "Check the wiring at {}".format(position)
    if len(entry["fitted"]) > 1:
        positions = results.places(job, sorted(entry["fitted"]))
        return message("results-fit-several", sort=job.sort.identity, positions=positions)
    return "Fit a new {} at {}".format(job.sort.unit, position)


def _exchange(job: Job, fitted) -> str:
    """Return 'Exchange right outer with left outer, and ...'; the suspect comes first in each pair."""
    holds = job.holds
    at = {holds[position]: position for position in sorted(holds) if holds[position]}
    suspects = _suspects(job)
    order = [p["id"] for p in job.positions if p["id"] in fitted]
    order = [p for p in order if p in suspects] + [p for p in order if p not in suspects]
    # A chain is told from its far end: the position whose unit comes into the hand.
    staying = [fitted[p] for p in sorted(fitted)]
    order = [p for p in order if holds.get(p) not in staying] + [p for p in order if holds.get(p) in staying]
    done, pairs, others = {}, [], []
    for position in order:
        if position in done:
            continue
        ring, here = [], position
        while here is not None and here in fitted and here not in done:
            done[here] = True
            ring.append(here)
            unit = fitted[here]
            here = at.get(unit)
        if here is None:
            others.append(_bring(job, unit, ring))
        elif len(ring) == 2:
            pairs.append("{} with {}".format(*[words.position_name(job, each) for each in ring]))
        else:
            others.append(_ring(job, ring))
    said = ["exchange " + ", and ".join(pairs)] if pairs else []
    return phrases.sentence_case("; then ".join(said + others))


def _suspects(job) -> list:
    """Return where the latest fault showed."""
    for test in reversed(job.tests):
        if test["heard"] and test["faulted"]:
            return test["faulted"]
    return []


def _bring(job: Job, unit, chain) -> str:
    """Return how a unit that no position holds comes in, and what moves on to make room for it."""
    name = unit_name(job.unit(unit))
    who = "your spare " + name
    if job.unit(unit).is_in_hand():
        who = name + ", the one in your hand,"
    said = "fit {} at {}".format(who, words.position_name(job, chain[-1]))
    for n in range(len(chain) - 1, 0, -1):
        goes = [words.position_name(job, each) for each in (chain[n], chain[n - 1])]
        said += "; the one from {} goes to {}".format(*goes)
    return said


def _ring(job, ring) -> str:
    """Return where each sensor of a ring goes; the first position of `ring` gets the second's."""
    names = [words.position_name(job, each) for each in ring]
    steps = ["{} to {}".format(names[0], names[-1])]
    for n in range(len(names) - 1, 0, -1):
        steps.append("{} to {}".format(names[n], names[n - 1]))
    count = _NUMBERS[len(ring)] if len(ring) < len(_NUMBERS) else str(len(ring))
    return "move {} in a ring: {}".format(count, ", ".join(steps))


def _position(entry) -> str:
    """Return the position a move is about: named, or the one it refits."""
    return entry["position"] if "position" in entry else sorted(entry["fitted"])[0]


def _cleaned(entry) -> list:
    """Return the positions that a cleaning is about."""
    return entry["positions"] if "positions" in entry else [entry["position"]]


def _start(entry) -> dict:
    facts = {
        "move": entry["move"],
        "fitted": entry.get("fitted", {}),
        "position": entry.get("position", ""),
        "reason": entry["reason"],
    }
    if "positions" in entry:
        facts["position"] = entry["positions"][0]
        facts["positions"] = entry["positions"]
    return draft("move_started", **facts)
