"""A circuit as a chain: the check that comes next and why, the segment named, and how all of it stands."""

from ..evidence import checks
from ..evidence import job_alone
from ..evidence.checks import Standing
from ..facts.evidence import provoked_words
from ..facts.measuring import wire_colours
from ..harness import order
from ..harness.chain import WARM
from ..messages import all_of
from ..messages import any_of
from ..messages import decimal
from ..messages import message
from ..messages import minutes
from ..messages import percent
from ..messages import sentences
from ..meter import copper
from ..parts.sort import Harness
from ..state.job import Job
from ..words import words
from . import measuring
from . import repairing
from .step import step

_BILLION = 1000000000
# A segment is told by itself from this chance on; more places than these are told by their number.
_LIKELY, _FEW = 0.5, 3


def next_check(job: Job, harness: Harness, position: str, repair: dict | None) -> dict:
    """Return the step at a circuit that is a chain: a check, the segment named, or the end of its checks."""
    now = checks.standing(job, position)
    chain, weights, done = now.chain, now.weights, now.reads
    named = checks.named(now) if done else None
    left = [] if checks.is_done(job, position) and not named else now.left
    # Views and lists ask for it again, and what is followed along both readings takes long.
    n = job_alone.kept(
        job,
        "check:" + job.id + ":" + position,
        lambda: order.best(chain, weights, now.unmade if left else [], _reached(chain, done), harness.reach),
    )
    further = None
    if n is not None:
        further = measuring.one_of_several(
            job,
            position,
            chain.probes[n].id.replace(WARM, ""),
            len(done),
            len(left),
            None if named else repair,
        )
        further["harness"] = view(job, position, n)
    if named:
        made = _found(job, harness, position, named, further)
    elif further:
        return further
    else:
        made = measuring.end(job, position, done, repair)
        likely = _likeliest(now)
        told = [made["text"], _where(harness, now)]
        # Nobody mends the likeliest of many places: what is left to check comes next.
        if chain.chances(weights)[likely] >= _LIKELY:
            segment = chain.segments[likely].id
            apart = sentences([message("guide-harness-apart"), message("guide-harness-warm")])
            told.append(apart if segment in harness.bought else harness.mends[segment])
        made["text"] = sentences(told)
    made["harness"] = view(job, position, None)
    return made


def _found(job: Job, harness: Harness, position: str, segment: str, further: dict | None) -> dict:
    """Return the step where a segment is named: what to do to it, or one check more."""
    where = {"segment": segment} if segment in job.sort.segments else {}
    repaired = repairing.repaired(job, "circuit:" + position, **where)
    if not where:
        # What positions share is none of a circuit's own segments.
        repaired["segments"] = repairing.segments(job, "feed")
    return step(
        "found",
        message(
            "guide-found-title",
            position=words.position_name(job, position),
            segment=harness.names[segment],
        ),
        harness.mends[segment],
        form="found",
        action=repaired,
        second=measuring.go_on(job),
        further=further,
    )


def _reached(chain, done: dict) -> tuple:
    reached: tuple = ()
    for probe in chain.probes:
        if probe.id in done:
            reached += probe.places
    return reached


def view(job: Job, position: str, n: int | None) -> dict | None:
    """Return how the chain of a position stands, None where it has none; `n` is the check that comes next."""
    harness = job.sort.harness
    if harness is None:
        return None
    now = checks.standing(job, position)
    chances, suspects = now.chain.chances(now.weights), now.chain.suspects(now.weights)
    marks = job.marks_at(position)
    segments = []
    for index in range(len(chances)):
        segment = harness.chain.segments[index]
        ppb = _ppb(chances[index])
        state = "sound"
        if index in suspects:
            state = "named" if len(suspects) == 1 else "possible"
        segments.append(
            {
                "id": segment.id,
                "name": harness.names[segment.id],
                "state": state,
                "chance": percent(ppb),
                "ppb": ppb,
                "branch": segment.branch,
            }
        )
    return {
        "position": position,
        "pins": marks.get("pins") or (job.position(position) or {}).get("pins", ""),
        "colours": [{"line": line, "colour": colour} for line, colour in wire_colours(marks)],
        "where": _where(harness, now),
        "segments": segments,
        "readings": _readings(job, position, checks.now(job, position)[0]),
        "next": None if n is None else _next(harness, now, n, suspects),
        "wire": _wire(job.wire_at(position)),
        "sizes": [{"id": size, "words": copper.called(size)} for size in sorted(copper.AT_20)],
    }


def _where(harness: Harness, now: Standing) -> dict:
    suspects, likely = now.chain.suspects(now.weights), _likeliest(now)
    chance = now.chain.chances(now.weights)[likely]
    if len(suspects) > 1 and chance >= _LIKELY:
        segment = _names(harness, [likely])[0]
        return message("guide-harness-likely", segment=segment, chance=percent(_ppb(chance)))
    if len(suspects) > _FEW:
        return message("guide-harness-open", count=len(suspects), total=len(harness.names))
    return message("guide-harness-in", segments=any_of(_names(harness, suspects)))


def _likeliest(now: Standing) -> int:
    chances = now.chain.chances(now.weights)
    return sorted([(-chances[n], n) for n in range(len(chances))])[0][1]


def _ppb(chance: float) -> int:
    return int(chance * _BILLION + 0.5)


def _names(harness: Harness, segments: list) -> list:
    return [harness.names[harness.chain.segments[n].id] for n in segments]


def _readings(job: Job, position: str, done: dict) -> list[dict]:
    """Return what was read in this round, each check once, in the order in which it was read last."""
    found: list[dict] = []
    for entry in job.measurements:
        check = job.sort.circuit_check(entry["check"])
        if entry["position"] == position and entry["check"] in done and check:
            found = [each for each in found if each["check"] != entry["check"]]
            reads = entry["reads"]
            said = message("guide-measure-unclear") if reads == "unclear" else check[reads]
            if "provoked" in entry:
                said = message("guide-harness-read-warm", read=said, what=provoked_words(entry["provoked"]))
            found.append(
                {
                    "check": entry["check"],
                    "name": check["title"],
                    "reads": reads,
                    "value": entry["value"],
                    "words": said,
                }
            )
    return found


def _next(harness: Harness, now: Standing, n: int, suspects: list) -> dict:
    """Return the check that comes next, why, and where its probes go."""
    chain, probe = now.chain, now.chain.probes[n]
    looked_at = [m for m in suspects if chain.segments[m].id in probe.segments]
    line = "signal" if probe.kinds and probe.to else ""
    if line and probe.kinds[0] in ("supply", "ground"):
        line = probe.kinds[0]
    return {
        "check": probe.id.replace(WARM, ""),
        "why": message(
            "guide-harness-why",
            segments=all_of(_names(harness, looked_at)),
            count=len(looked_at),
            chance=percent(_ppb(chain.seen(now.weights, n))),
        ),
        "minutes": minutes(
            int(order.minutes(chain, n, _reached(chain, now.reads), harness.reach) * 100 + 0.5)
        ),
        "from": probe.segments[0],
        "to": probe.to,
        "line": line,
    }


def _wire(noted: dict | None) -> dict | None:
    if not noted:
        return None
    return {
        "size": noted["size"],
        "centimetres": noted["centimetres"],
        "celsius": noted["celsius"],
        "colour": noted["colour"],
        "words": message(
            "guide-wire-noted",
            size=copper.called(noted["size"]),
            metres=decimal(noted["centimetres"], 2),
            celsius=str(noted["celsius"]),
        ),
    }
