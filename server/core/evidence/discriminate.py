"""What would tell two explanations apart: the move whose results differ most between them.

Each explanation is taken as the whole truth; then a test after a move shows a fault, position by
position, with the chance that the noisy-OR of the reasoning gives. The move where one position
differs most wins; between moves about as good, the shorter one.
"""

from collections import namedtuple

from ..infer.case import NOBODY
from ..infer.case_form import read
from ..infer.model import Model
from ..infer.noisy_or import chances_faulted
from ..plan.moves import reach
from ..plan.moves import refit
from ..plan.moves import same_part

# Less than this and one result would hardly sway anybody.
_TELLS = 0.3
# Circuit, control unit, unit, feed and blockage.
_MOST_PARENTS = 5
# In tenths: as good as certain.
_SHARP = 9

# `fitted`: position -> unit by number, as far as it changes; `place`: the position cleaned or measured.
_Move = namedtuple("_Move", ("kind", "place", "fitted", "minutes"))


def apart(case: dict, one: list, other: list) -> dict:
    """Return what would tell two sets of causes apart.

    {"same": the two do the same in any test made now,
     "sharp": one result of it all but decides,
     "move": None or an entry as in `next` of the reasoning, with `results`: [result if `one` is true,
     result if `other` is true], each {"faulted": [...]} or {"reads": ...}}
    """
    model = Model(read(case))
    live = model.live()
    acting = [
        [cause for cause in range(len(live)) if live[cause] and model.names[cause] in causes]
        for causes in (one, other)
    ]
    if acting[0] == acting[1] and not _benched(model, one, other):
        return {"same": True, "sharp": False, "move": None}
    rows = []
    moves = _moves(model, one, other)
    for n in range(len(moves)):
        tells = _tells(model, moves[n], one, other)
        if tells >= _TELLS:
            rows.append((-int(tells * 10 + 0.5), int(moves[n].minutes * 100 + 0.5), n))
    if not rows:
        return {"same": False, "sharp": False, "move": None}
    less, _, n = sorted(rows)[0]
    return {"same": False, "sharp": -less >= _SHARP, "move": _shown(model, moves[n], one, other)}


def _benched(model, one: list, other: list) -> list:
    """Return the units that only one side blames and that are at hand, fitted nowhere."""
    found = []
    for unit, known in enumerate(model.case.units):
        name = model.names[model.unit[unit]]
        if (name in one) != (name in other) and unit not in model.fitted and known.available:
            found.append(unit)
    return found


def _moves(model, one: list, other: list) -> list:
    """Return the moves worth a look, in a fixed order."""
    case, minutes = model.case, model.case.minutes
    found = [_Move("retest", NOBODY, {}, minutes["test"])]
    suspected = [place for place in range(len(case.positions)) if _is_suspected(model, place, one, other)]
    clean = [p for p in range(len(case.positions)) if p not in suspected and model.fitted[p] >= 0]
    for place in suspected:
        minutes_to = reach(case, model.hanging, place)
        if model.blockable[place]:
            found.append(_Move("clean", place, {}, minutes_to + minutes["clean"] + minutes["test"]))
        circuit = model.circuits[place][-1]
        if not model.meter_bad[circuit] and not model.meter_good[circuit]:
            found.append(_Move("meter", place, {}, minutes_to + minutes["meter"]))
        unit = model.fitted[place]
        for partner in clean:
            if unit >= 0 and same_part(case, unit, model.fitted[partner]):
                fitted = {place: model.fitted[partner], partner: unit}
                found.append(_exchange(model, fitted))
    for unit in _benched(model, one, other):
        for place in clean:
            if same_part(case, unit, model.fitted[place]):
                found.append(_exchange(model, {place: unit}))
    return found


def _exchange(model, fitted: dict):
    return _Move("exchange", NOBODY, fitted, refit(model.case, model.hanging, list(fitted), False))


def _is_suspected(model, place: int, one: list, other: list) -> bool:
    """Tell whether one of the two blames something that belongs to this position now."""
    causes = [model.circuits[place][-1], model.blocked[place]]
    if model.fitted[place] >= 0:
        causes.append(model.unit[model.fitted[place]])
    for cause in causes:
        if model.names[cause] in one or model.names[cause] in other:
            return True
    return False


def _tells(model, move, one: list, other: list) -> float:
    """Return the largest difference in chance that any reading of the move shows."""
    most = 0.0
    for first, second in zip(_chances(model, move, one), _chances(model, move, other)):
        most = max(most, first - second, second - first)
    return most


def _chances(model, move, causes: list) -> list:
    """Return the chance of a fault at each position (of 'bad' for a meter) if `causes` are the truth."""
    rates = model.rates
    if move.kind == "meter":
        present = model.names[model.circuits[move.place][-1]] in causes
        return [rates["meter_sees"] if present else rates["meter_false"]]
    faulted = chances_faulted(_MOST_PARENTS, rates)
    chances = []
    for place in range(len(model.fitted)):
        unit = move.fitted.get(place, model.fitted[place])
        if unit == NOBODY:
            chances.append(0.0)
            continue
        acting = [model.circuits[place][-1], model.controls[-1], model.unit[unit]]
        if model.group[place] is not None:
            acting.append(model.feeds[model.group[place]][-1])
        if model.blockable[place] and place not in move.fitted and place != move.place:
            acting.append(model.blocked[place])
        count = len([cause for cause in acting if model.names[cause] in causes])
        chances.append(faulted[count])
    return chances


def _shown(model, move, one: list, other: list) -> dict:
    positions = model.case.positions
    shown = {"move": move.kind, "results": []}
    if move.fitted:
        shown["fitted"] = {positions[p].id: model.case.units[move.fitted[p]].id for p in sorted(move.fitted)}
    elif move.place != NOBODY:
        shown["position"] = positions[move.place].id
    for causes, against in ((one, other), (other, one)):
        mine, theirs = _chances(model, move, causes), _chances(model, move, against)
        if move.kind == "meter":
            shown["results"].append({"reads": "bad" if mine[0] > theirs[0] else "good"})
            continue
        # A fault that shows less than every second time is still what to look for where the two differ.
        faulted = [
            positions[place].id
            for place in range(len(mine))
            if mine[place] >= 0.5 or mine[place] - theirs[place] >= _TELLS
        ]
        shown["results"].append({"faulted": faulted})
    return shown
