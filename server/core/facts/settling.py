"""What follows once somebody says which story is true: units that were not where another one is, and tests.

Only a fact that names the true stories (`settles`) does this; what an earlier app recorded leaves the tests
made meanwhile without a place for what was in dispute.
"""

from ..state import contradictions
from ..state import stories
from .conflicts import settled
from .places import note_move
from .places import put


def displace(state, event, job, position) -> None:
    """Take the unit on record at a position into the hand: another one was found there."""
    holds = state.vehicles[job["vehicle"]]["holds"]
    unit = state.units[holds[position]]
    holds[position] = None
    state.place_unit(unit, "out", None, None, job["id"])
    state.join_unit(unit, job["id"])
    note_move(event, job, unit, "displaced", event["data"]["how"])


def disprove(state, event, job, position, found: str) -> None:
    """Settle the other units that were claimed at a position, where only one place is left for them."""
    for identity in state.disputed(job["id"]):
        unit = state.units[identity]
        if identity == found or not [c for c in unit["claims"] if _is_at(c, job, position)]:
            continue
        left = []
        for claim in unit["claims"]:
            if not _is_at(claim, job, position) and claim not in left:
                left.append(claim)
        if not left:
            state.place_unit(unit, "out", None, None, job["id"])
        elif len(left) > 1 or (left[0]["place"], left[0]["position"]) != (unit["place"], unit["position"]):
            continue  # it takes a scan of this one, too
        state.settle_unit(unit, [])
        settled(state, identity)
        note_move(event, job, unit, "displaced", event["data"]["how"])


def believe(state, event, job, position, told: list) -> None:
    """Let the unit that was claimed where another one is no more be there, if nothing else is said of it."""
    vehicle = state.vehicles[job["vehicle"]]
    for identity in state.disputed(job["id"]):
        unit = state.units[identity]
        claimed = [claim for claim in unit["claims"] if _is_at(claim, job, position)]
        alone = contradictions.is_there_or_in_hand(unit, vehicle["id"], position)
        if vehicle["holds"].get(position) is None and claimed and alone:
            state.settle_unit(unit, [])
            settled(state, identity)
            put(state, event, job, unit, "fitted", position, event["data"]["how"])
            true = [stories.key_of(each) for each in told if _tells(each, identity, job, position)]
            right_tests(state, job, identity, told, true)


def _tells(story, unit: str, job, position) -> bool:
    return story.unit == unit and (story.vehicle, story.position) == (job["vehicle"], position)


def _is_at(claim: dict, job, position) -> bool:
    return claim["vehicle"] == job["vehicle"] and claim["position"] == position


def right_tests(state, job, unit: str, told: list, true: list) -> None:
    """Give the tests since the first of the stories the place at which a unit was: that of the true ones.

    `told` are all stories as they stood before, `true` the keys of those that are. A test of a phone that
    tells a true story follows that one; what only an untrue one has put there nobody knows.
    """
    start = contradictions.begins(told, job)
    claimed = contradictions.claimed_positions(told, job["vehicle"])
    believed = [each for each in told if stories.key_of(each) in true and each.unit == unit]
    untrue = [each for each in told if stories.key_of(each) not in true and _is_denied(state, each, unit)]
    still = contradictions.disputed_positions(state, job["vehicle"])
    for test in job["tests"]:
        if test["n"] <= start:
            continue
        story = _followed(test, believed, job)
        if story:
            here = story.position if story.place == "fitted" and story.vehicle == job["vehicle"] else None
            _put_right(test, unit, here, claimed, still)
        else:
            for each in untrue:
                if 0 <= stories.number_on(each, job) < test["n"]:
                    _take_out(test, each)
    _end_move(state, job)


def _is_denied(state, story, unit: str) -> bool:
    """Tell whether a story can't be true beside the place at which the unit is now."""
    facts = state.units[unit]
    there = facts["place"] == "fitted" and (facts["vehicle"], facts["position"])
    return story.unit == unit or there == (story.vehicle, story.position)


def _followed(test: dict, believed: list, job: dict):
    """Return the true story that a test followed: its own phone's last, else the last one before it."""
    before = [each for each in believed if stories.number_on(each, job) < test["n"]]
    device = stories.device_of(test["event"])
    own = [each for each in before if stories.device_of(stories.event_of(each)) == device]
    return own[-1] if own else before[-1] if before else None


def _take_out(test: dict, story) -> None:
    if test["fitted"].get(story.position) == story.unit:
        del test["fitted"][story.position]
        _dispute(test, story.position)


def _dispute(test: dict, place: str) -> None:
    """Let nobody be blamed by what a test read at a place: what sat there nobody said."""
    if place not in test["disputed"]:
        test["disputed"] = sorted(test["disputed"] + [place])


def _put_right(test: dict, unit: str, here: str | None, claimed: list, still: list) -> None:
    """Let a test have had a unit `here` (None: at no position of this vehicle) and at no other position."""
    fitted = test["fitted"]
    for place in claimed:
        if place != here and fitted.get(place) == unit:
            del fitted[place]
            _dispute(test, place)
        elif place not in still and (place == here or place in fitted):
            test["disputed"] = [each for each in test["disputed"] if each != place]
    if here:
        for place in sorted(fitted):
            if fitted[place] == unit:
                del fitted[place]
        fitted[here] = unit


def _end_move(state, job) -> None:
    """End the move under way where the last test turns out to have been made with it done."""
    move = job["move"]
    if not move or not move["fitted"] or not job["tests"]:
        return
    tested, holds = job["tests"][-1]["fitted"], state.vehicles[job["vehicle"]]["holds"]
    for place in move["fitted"]:
        if not tested.get(place) == holds.get(place) == move["fitted"][place]:
            return
    job["move"] = None
