"""The next moves in words: title, reason, minutes, and what each possible result would then say."""

from ..evidence import checks
from ..evidence import ways as mixed_ways
from ..evidence import who_is_who
from ..facts.draft import draft
from ..messages import all_of
from ..messages import message
from ..messages import minutes
from ..parts import cautions
from ..state import exchange
from ..state.job import Job
from ..words import causes
from ..words import results
from ..words import words
from ..words.words import unit_name
from . import repairing
from . import repeats
from .fixing import replace_at

_START_WORDS = {
    "retest": "guide-start-retest",
    "clean": "guide-start-clean",
    "unplug": "guide-start-unplug",
    "meter": "guide-start-meter",
    "listen": "guide-start-listen",
    "replace": "guide-start-replace",
    "repair": "guide-repaired",
}


def in_words(job: Job, result: dict) -> list[dict]:
    """Return the candidates of the reasoning as the app shows them, best first.

    A circuit whose checks left the question open is not offered again: they would leave it so. A bare test
    comes last where it has just said the same twice.
    """
    return [
        _move(job, _telling(job, result, entry))
        for entry in repeats.last(job, result["next"])
        if entry["move"] != "meter" or not checks.gave_nothing(job, entry["position"])
    ]


def _telling(job: Job, result: dict, entry: dict) -> dict:
    """Return a move with who would be who after each of its results, where units got mixed up."""
    told = dict(entry)
    told["outlook"] = []
    for outcome in entry["outlook"]:
        who = who_is_who.after(job, result, outcome) if "ways" in outcome else ""
        told["outlook"].append(dict(outcome, who=who))
    return told


def _move(job: Job, entry) -> dict:
    return {
        "move": entry["move"],
        "title": title_of(job, entry),
        "reason": entry["reason"],
        "why_not": entry.get("why_not", ""),
        "minutes_words": minutes(entry["minutes_x100"]),
        "start_words": _start_words(job, entry),
        "outlook": results.outlook(job, entry),
        "events": _events(job, entry),
        "touches": _touched(job, entry),
        "arrows": _arrows(job, entry),
        "form": _form(job, entry),
        "repair": _repair(job, entry),
        "cautions": _cautions(job, entry),
    }


def _start_words(job: Job, entry) -> dict:
    """Return the button that begins a move; an exchange names the two, or what it is about."""
    if entry["move"] != "exchange":
        return message(_START_WORDS[entry["move"]], sort=job.sort.identity)
    places = [position["id"] for position in job.positions if position["id"] in entry["fitted"]]
    if not exchange.goes_round(entry["fitted"], job.holds):
        return message("guide-start-fitting")
    if len(places) == 2:
        names = all_of([words.position_name(job, place) for place in places])
        return message("guide-start-exchange", positions=names)
    return message("guide-start-exchange-several")


def _events(job: Job, entry) -> list:
    """Return what a tap on the move records: that it starts.

    Nothing where more is asked first: a replacement's new unit, where a repair was, what was heard.
    """
    return [] if entry["move"] in ("replace", "listen", "repair") else [_start(job, entry)]


def _touched(job: Job, entry) -> list[str]:
    """Return the positions that a hand comes to, in the order in which they are shown."""
    if entry["move"] in ("retest", "repair"):
        return []
    places = sorted(entry["fitted"]) if "fitted" in entry else _cleaned(entry)
    return [position["id"] for position in job.positions if position["id"] in places]


def _arrows(job: Job, entry) -> list[dict]:
    """Return which goes where, as {"start", "goal"}; `start` is "" for a unit that no position holds."""
    fitted = entry.get("fitted", {})
    holds = job.holds
    at = {holds[position]: position for position in sorted(holds) if holds[position]}
    return [{"start": at.get(fitted[place], ""), "goal": place} for place in sorted(fitted)]


def _form(job: Job, entry) -> dict | None:
    """Return the step that has to be filled in before a move can start: a replacement's new unit.

    It takes the place of a fitted one, or of nothing where the position was left empty.
    """
    if entry["move"] != "replace":
        return None
    position = _position(entry)
    return replace_at(job, position, job.fitted_at(position))


def _repair(job: Job, entry) -> dict | None:
    """Return the button that records a repair, whose form asks where it was and what was done."""
    return repairing.repaired(job, entry["cause"]) if entry["move"] == "repair" else None


def _cautions(job: Job, entry) -> list[dict]:
    """Return the cautions of what the screen of the moves asks itself: a repair has no step of its own."""
    if entry["move"] != "repair":
        return []
    return cautions.for_step(job.sort, "wiring.repair", job.cautions_read)


def title_of(job: Job, entry: dict) -> dict:
    """Return what to do, in a few words."""
    move = entry["move"]
    if move == "exchange":
        return _exchange(job, entry["fitted"])
    if move == "retest":
        return job.sort.says("guide-move-retest")
    if move == "clean":
        names = [words.position_name(job, position) for position in _cleaned(entry)]
        return message("guide-move-clean", positions=all_of(names), count=len(names))
    if move == "repair":
        return message("guide-move-repair", cause=causes.phrase(job, entry["cause"]))
    position = words.position_name(job, _position(entry))
    if move == "unplug":
        return message("guide-move-unplug", position=position)
    if move == "meter":
        return message("guide-move-meter", position=position)
    if move == "listen":
        return message("guide-move-listen", position=position)
    if len(entry["fitted"]) > 1:
        places = results.places(job, sorted(entry["fitted"]))
        return message("guide-move-replace-several", positions=places, sort=job.sort.identity)
    return message("guide-move-replace", position=position, sort=job.sort.identity)


def _exchange(job: Job, fitted) -> dict:
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
            one, other = [words.position_name(job, each) for each in ring]
            pairs.append(message("guide-exchange-pair", one=one, other=other))
        else:
            others.append(_ring(job, ring))
    if pairs:
        told = pairs[0]
        for pair in pairs[1:]:
            told = message("guide-exchange-pair-more", before=told, pair=pair)
        others.insert(0, message("guide-exchange-pairs", pairs=told))
    said = others[0]
    for each in others[1:]:
        said = message("guide-exchange-then", before=said, next=each)
    return message("guide-move-exchange", moves=said)


def _suspects(job) -> list:
    """Return where the latest fault showed."""
    for test in reversed(job.tests):
        if test["heard"] and test["faulted"]:
            return test["faulted"]
    return []


def _bring(job: Job, unit, chain) -> dict:
    """Return how a unit that no position holds comes in, and what moves on to make room for it."""
    kind = "guide-exchange-in-hand" if job.unit(unit).is_in_hand() else "guide-exchange-spare"
    said = message(
        "guide-exchange-mixed" if unit in mixed_ways.loose(job) else kind,
        unit=unit_name(job.unit(unit)),
        position=words.position_name(job, chain[-1]),
    )
    for n in range(len(chain) - 1, 0, -1):
        said = message(
            "guide-exchange-goes-on",
            before=said,
            start=words.position_name(job, chain[n]),
            goal=words.position_name(job, chain[n - 1]),
        )
    return said


def _ring(job, ring) -> dict:
    """Return the way round a ring, each position named once; the first of `ring` gets the second's sensor."""
    way = [ring[0]] + [ring[n] for n in range(len(ring) - 1, 0, -1)]
    names = [words.position_name(job, each) for each in way]
    return message("guide-exchange-ring", count=len(ring), positions=all_of(names))


def _position(entry) -> str:
    """Return the position a move is about: named, or the one it refits."""
    return entry["position"] if "position" in entry else sorted(entry["fitted"])[0]


def _cleaned(entry) -> list:
    """Return the positions that a cleaning is about."""
    return entry["positions"] if "positions" in entry else [entry["position"]]


def _start(job: Job, entry) -> dict:
    facts = {
        "move": entry["move"],
        "fitted": entry.get("fitted", {}),
        "position": entry.get("position", ""),
        "reason": "",
    }
    if "positions" in entry:
        facts["position"] = entry["positions"][0]
        facts["positions"] = entry["positions"]
    if entry["move"] == "meter":
        facts.update(checks.again(job, entry["position"]))
    return draft("move_started", **facts)
