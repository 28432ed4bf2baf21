"""Who said what of a unit in dispute: each claim with the change of custody that made it.

A claim by itself is a place. The unit's trail has who made it, when, by which kind of entry and as which of
its job (`kind` and `n` of a move), so nothing more is kept for it: the order of stories never hangs on the
history of a job, which a server keeps in its log alone.
"""

from collections import namedtuple

# `move` is the change of custody that says so, None for what was on record from the opening on.
Story = namedtuple("Story", ("unit", "place", "vehicle", "position", "move"))

BEFORE = "-"

# What a change of custody led to; one that was found not to be where it was told to sit is in the hand.
_LEADS_TO = {
    "fitted": "fitted",
    "out": "out",
    "displaced": "out",
    "stock": "stock",
    "counter": "counter",
    "customer": "customer",
    "scrapped": "scrapped",
}


def told(state, identity: str) -> list[Story]:
    """Return the stories about a unit in dispute, in the order of the log; none of one that is not."""
    unit = state.units[identity]
    claims, moves = unit["claims"], unit["moves"]
    if not claims:
        return []
    said = [n for n in range(len(moves)) if moves[n]["what"] == "disputed"]
    said = said[max(0, len(said) - len(claims) + 1) :] if len(claims) > 1 else []
    first = said[0] if said else len(moves)
    found = [_story(identity, claims[0], _last_place(moves[:first], claims[0]["place"]))]
    for n in range(1, len(claims)):
        found.append(_story(identity, claims[n], moves[said[n - 1]] if n <= len(said) else None))
    return _each_once(found)


def last_of_each(told: list[Story]) -> list[Story]:
    """Return the last story of each phone about each unit, in their order; two where one phone told all."""
    last = {}
    for n in range(len(told)):
        last[(told[n].unit, device_of(event_of(told[n])))] = n
    kept = sorted(last.values())
    return [told[n] for n in kept] if len(kept) > 1 else told[-2:]


def of_occupant(state, vehicle: str, position: str, identity: str) -> Story:
    """Return the story that put a unit where it sits on record."""
    move = _last_place(state.units[identity]["moves"], "fitted")
    known = move if move and move["position"] == position else None
    return Story(identity, "fitted", vehicle, position, known)


def event_of(story: Story) -> str:
    """Return the identity of the entry that tells a story, "" where none does."""
    return story.move["event"] if story.move else ""


def key_of(story: Story) -> str:
    """Return the identity of the entry that tells a story, BEFORE where it was on record before any."""
    return event_of(story) or BEFORE


def number_on(story: Story, job: dict) -> int:
    """Return as or after which entry of a job a story was told, -1 where it was before all of them."""
    move = story.move
    if move is None:
        return -1
    if move["job"] == job["id"]:
        return move["n"]
    return move["then"].get(job["id"], job["entries"]) - 1 if "then" in move else -1


def is_told_later(story: Story, job: dict) -> bool:
    """Tell whether somebody said it apart from a job that was closed by then: what that concluded stands."""
    move = story.move
    outside = move is not None and move["job"] != job["id"] and "then" in move
    return outside and job["closed"] is not None and job["id"] not in move["then"]


def device_of(event: str) -> str:
    """Return the phone that made an entry, by the entry's identity."""
    return event.rpartition(":")[0]


def known(job: dict) -> list[str]:
    """Return the last entry of each phone that counts on a job: what a phone that has it knows."""
    phones = job["phones"]
    return ["{}:{}".format(device, phones[device]["seq"]) for device in sorted(phones)]


def is_unknown(entry: str, event: dict) -> bool:
    """Tell whether a phone, by what its entry says that it `knows`, did not know of another phone's entry."""
    device, _, seq = entry.rpartition(":")
    if "knows" not in event["data"] or device == event["device"]:
        return False
    for each in event["data"]["knows"]:
        other, _, last = each.rpartition(":")
        if other == device and last.isdigit():
            return int(seq) > int(last)
    return True


def _last_place(moves: list, place: str) -> dict | None:
    """Return the last of these moves that led to a place, None where it led to another than this."""
    for move in reversed(moves):
        if move["what"] in _LEADS_TO:
            return move if _LEADS_TO[move["what"]] == place else None
    return None


def moves_since(moves: list, place: str) -> list:
    """Return the changes of custody since a unit was last at a place, none where it never was there."""
    for n in range(len(moves) - 1, -1, -1):
        if leads_to(moves[n]) == place:
            return [move for move in moves[n + 1 :] if leads_to(move)]
    return []


def leads_to(move: dict) -> str:
    """Return the place that a change of custody led to, "" where it led to none."""
    return _LEADS_TO.get(move["what"], "")


def _story(identity: str, claim: dict, move: dict | None) -> Story:
    return Story(identity, claim["place"], claim["vehicle"], claim["position"], move)


def _each_once(found: list) -> list:
    """Leave out what was on record of a unit that nobody had introduced: the same entry says more."""
    kept = []
    for n in range(len(found)):
        event = event_of(found[n])
        said_again = event and event in [event_of(each) for each in found[n + 1 :]]
        introduced = n > 0 or event or found[n].place != "out" or len(found) == 1
        if introduced and not said_again:
            kept.append(found[n])
    return kept
