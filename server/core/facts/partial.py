"""Puts a part of the state that was folded afresh in the place of what it was before."""

from .connected import LEARNED
from .connected import MIXED
from .connected import PRINTED


def replace(state, part, places: list, named: list, place_of) -> None:
    """Let `part`, folded of the entries at `places`, which name `named`, replace what `state` has of them.

    `place_of(identity)` is the place of an entry in the log: conflicts and the like stand in that order.
    """
    for name in named:
        if name in state.units:
            state.remove_unit(name)
        for entities in (state.vehicles, state.jobs, state.codes, state.aliases):
            if name in entities:
                del entities[name]
    for unit in part.units:
        state.add_unit(part.units[unit])
    for job in part.jobs:
        state.jobs[job] = part.jobs[job]
    state.vehicles.update(part.vehicles)
    state.codes.update(part.codes)
    state.aliases.update(part.aliases)
    if MIXED in named:
        state.mixed = part.mixed
    if PRINTED in named:
        state.printed = part.printed
    if LEARNED in named:
        state.learned = part.learned
    within = {place: True for place in places}
    state.renew_conflicts(_in_order(state.conflicts, part.conflicts, within, place_of))
    state.not_understood = _in_order(state.not_understood, part.not_understood, within, place_of)
    state.verdicts = {}


def _in_order(known: list, fresh: list, within: dict, place_of) -> list:
    """Return both lists as one, in the order of the log, without those of `known` from places `within`."""
    both = []
    taken = 0
    for entry in known:
        place = place_of(entry["event"])
        if place in within:
            continue
        while taken < len(fresh) and place_of(fresh[taken]["event"]) < place:
            both.append(fresh[taken])
            taken += 1
        both.append(entry)
    return both + fresh[taken:]
