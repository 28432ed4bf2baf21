"""Entries as no phone makes them: valid ones with a value that is odd, extreme, of the wrong sort or gone.

The same seed gives the same entries: server, both hosts of the core and the screens are asked of the same.
"""

import copy
import random

from server.core.errors import BadInput
from server.core.facts.kinds import KINDS
from server.core.log import envelope
from server.log import intake
from tests.core.driver import DEVICE
from tests.core.driver import START

BEYOND = 2**53 - 1
POSITIONS = ("left", "middle", "right")
TEXTS = (
    "", " ", "\n", "a\tb", "\x00", "bell \x07", "\x1b[31m", "\x7f", "\x85", "soft\u00adhyphen",
    "left\u202etfel", "\u2066a\u2069", "\u200bzero", "a\u200db", "\ufeff", "\u2028",
    "\u05e2\u05d1\u05e8", "\U0001f697\u200d\U0001f527", "e\u0301" * 20, "A" * 80, "W" * 2000,
    "<b>&amp;</b>", "{ $x }", "${1}", "../../x", "constructor",
    "__proto__", "null", "7", "K7F-3M", "100 %", "half \ud83d",
)  # fmt: skip
IDS = ("ä", "j 1", "__proto__", "constructor", "a/b", "a.b", "x" * 40, "\u202ea", "%2F", "-")
NUMBERS = (-1, 0, 1, 24, 600, 601, 10**9, 10**9 + 1, BEYOND, -BEYOND, BEYOND + 1)
TIMES = (0, 1, envelope.TOO_LATE - 1, envelope.TOO_LATE, 8_640_000_000_000_001, 9_000_000_000_000_000, BEYOND)
ELSE = (None, True, False, [], {}, ["x"], {"x": 1}, [[]], 3, 0.5)


def opening(number: int) -> dict:
    """Return the data of a job that begins."""
    places = [
        {"id": each, "name": f"{each} {number}", "group": "rear", "edge": "rear", "reach_minutes": 3}
        for each in POSITIONS
    ]
    vehicle = {"id": f"v{number}", "name": f"Car {number}", "vin": "", "plate": ""}
    return {"vehicle": vehicle, "complaint": "beeps", "layout": "", "part": "P-1", "positions": places}


def _facts(number: int) -> list[tuple[str, dict]]:
    unit = f"v{number}.left"
    return [
        ("caution_acknowledged", {"caution": "level"}),
        ("lamp_checked", {"when": "key_on", "result": "normal", "note": "n"}),
        ("looked", {"positions": [{"position": "left", "found": "dirt"}], "note": "n"}),
        ("test_run", {"heard": True, "faulted": ["left"], "silent": [], "unplugged": [],
                      "codes": [{"position": "left", "code": "B1", "failure_type": ""}],
                      "came_and_went": False, "note": "n"}),
        ("unit_labelled", {"unit": unit, "code": "JRMMA", "how": "scanned"}),
        ("part_noted", {"unit": unit, "part": "P-2", "serial": "S"}),
        ("photo_taken", {"sha256": "ab" * 32, "mime": "image/jpeg", "bytes": 9, "width": 4, "height": 3,
                         "shows": "position", "position": "left", "unit": ""}),
        ("move_started", {"move": "exchange", "fitted": {"left": f"v{number}.right", "right": unit},
                          "position": "", "reason": "r"}),
        ("unit_pulled", {"unit": unit, "position": "left", "how": "scanned"}),
        ("unit_moved", {"unit": unit, "place": "stock", "how": "scanned", "note": "n"}),
        ("cleaned", {"position": "middle", "note": "n"}),
        ("circuit_measured", {"position": "left", "check": "supply", "value": "12", "reads": "good"}),
        ("circuit_repaired", {"cause": "circuit:left", "what": "w"}),
        ("reach_set", {"position": "left", "minutes": 3}),
        ("money_set", {"labour_per_hour": 6000, "part_price": 4000, "wrong_purchase": 0}),
        ("comeback_set", {"factor": 2, "months": 12}),
        ("rates_set", {"rates_ppm": {"unit": 50000}, "confidence_ppm": 950000}),
        ("rates_learned", {"rates_ppm": {"unit": 50000}, "doubts_x100": {"unit": 180}, "jobs": 52,
                           "upto": "d:9"}),
        ("minutes_learned", {"minutes_x100": {"pull": 60}, "reach_x100": {}, "jobs": 52, "upto": "d:9"}),
        ("job_paused", {"why": "part", "part": "P", "note": "n"}),
        ("job_handed_over", {"to": "Jo", "note": "n"}),
        ("unit_added", {"unit": f"u00000000000{number}", "part": "P", "serial": "", "code": "",
                        "how": "typed", "place": "stock"}),
        ("return_received", {"unit": unit, "how": "scanned", "code": "", "part": "", "serial": "",
                             "compared": "", "note": "n"}),
        ("corrected", {"device": DEVICE, "seq": 3, "reason": "slip"}),
        ("not_known_yet", {"note": "n"}),
    ]  # fmt: skip


def odd_entries(seed: int, jobs: int, facts: int) -> list[dict]:
    """Return drafts {"kind", "data", "job", "at"}: the jobs first, then facts on them, half of them odd."""
    dice = random.Random(seed)
    drafts = _opened(jobs)
    for _ in range(facts):
        number = dice.randint(1, jobs)
        kind, data = dice.choice(_facts(number))
        drafts.append({"kind": kind, "data": data, "job": f"j{number}", "at": START})
    return [_odd(dice, draft) if dice.random() < 0.6 else draft for draft in copy.deepcopy(drafts)]


def declared_entries(seed: int, jobs: int, facts: int) -> list[dict]:
    """Return drafts as `odd_entries` does, of all kinds that there are, with any value that a field takes.

    A kind or field that is new is drawn by its declaration, with nothing said of it here.
    """
    dice = random.Random(seed)
    drafts = _opened(jobs)
    for _ in range(facts):
        number = dice.randint(1, jobs)
        kind = KINDS[dice.choice(sorted(KINDS))]
        data = {
            field.name: _value(dice, field, number)
            for field in kind.fields
            if not field.later or dice.random() < 0.5
        }
        drafts.append({"kind": kind.name, "data": data, "job": f"j{number}", "at": START})
    return [_odd(dice, draft) if dice.random() < 0.4 else draft for draft in copy.deepcopy(drafts)]


def _opened(jobs: int) -> list[dict]:
    return [
        {"kind": "job_opened", "data": opening(number), "job": f"j{number}", "at": START}
        for number in range(1, jobs + 1)
    ]


def _value(dice, field, number: int):
    """Return a value that a field takes: mostly one that means something on the job, so that facts meet."""
    meant = [data[field.name] for _, data in _facts(number) if field.name in data]
    meant = [value for value in (*meant, *getattr(field, "allowed", ())) if _takes(field, value)]
    if meant and dice.random() < 0.7:
        return dice.choice(meant)
    return dice.choice([value for value in _values(number) if _takes(field, value)])


def _values(number: int) -> list:
    """Return values of every sort that some field of some kind takes, on one job."""
    values = [*ELSE, *TEXTS, *IDS, *NUMBERS, *POSITIONS, "JRMMA", "ab" * 32, DEVICE, "circuit:left"]
    for _, data in _facts(number):
        values += data.values()
    for kind in KINDS.values():
        values += [word for field in kind.fields for word in getattr(field, "allowed", ())]
    opened, seen = opening(number), {"device": DEVICE, "seq": 1}
    return [*values, opened["vehicle"], opened["positions"], [0, 1], [[30, 40]], {"left": 30}, seen,
            {"kind": "cleaned", "data": {"position": "left", "note": "n"}}]  # fmt: skip


def _takes(field, value) -> bool:
    try:
        field.check("data", value)
    except BadInput:
        return False
    return True


def chained(drafts: list[dict]) -> list[dict]:
    """Return the drafts as the envelopes of one phone."""
    events, prev = [], ""
    for seq, draft in enumerate(drafts, 1):
        event = {"device": DEVICE, "seq": seq, "prev": prev, "v": 1, "actor": "Mara", **draft}
        prev = envelope.hash_of(event)
        events.append(event)
    return events


def is_kept(draft: dict) -> bool:
    """Tell whether a server has taken such an entry at any time: it is an envelope with a hash."""
    try:
        (event,) = chained([draft])
        intake.read(event)
    except (intake.Malformed, BadInput):
        return False
    return True


def is_taken(draft: dict) -> bool:
    """Tell whether a server takes it now."""
    return is_kept(draft) and intake.judge_bounds(chained([draft])[0]) is None


def _odd(dice, draft: dict) -> dict:
    """Return a draft with one thing odd."""
    what = dice.random()
    if what < 0.12:
        return {**draft, "at": dice.choice(TIMES)}
    if what < 0.15:
        return {**draft, "job": dice.choice(IDS)}
    places = list(_places(draft["data"]))
    if not places:
        return draft
    holder, key = dice.choice(places)
    if isinstance(holder, dict) and dice.random() < 0.1:
        del holder[key]
    elif dice.random() < 0.2:
        holder[key] = dice.choice(ELSE)
    elif isinstance(holder[key], str):
        holder[key] = dice.choice(IDS) if key in ("id", "unit", "position", "group") else dice.choice(TEXTS)
    elif isinstance(holder[key], int) and not isinstance(holder[key], bool):
        holder[key] = dice.choice(NUMBERS)
    elif isinstance(holder[key], dict):
        holder[key][dice.choice(IDS[2:6])] = dice.choice(TEXTS)
    elif isinstance(holder[key], list):
        holder[key].append(dice.choice((*TEXTS, *ELSE)))
    return draft


def _places(value):
    """Yield (object or list, key) of every value in it."""
    for key in sorted(value) if isinstance(value, dict) else range(len(value)):
        yield value, key
        if isinstance(value[key], dict | list) and value[key]:
            yield from _places(value[key])
