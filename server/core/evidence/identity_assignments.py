"""Reasoning over units that got mixed up: each assignment of identities, weighed by the tests.

For every assignment of identities to the bodies the case is exact: a body's tests are simply tests
of that unit. Before the tests all assignments are alike; afterwards each has the weight of how well it
predicts all readings (Bayes' rule), and every figure is the mean over the assignments with these weights.
Whether a body is the bad one is answered exactly, though nobody may ever know which one it was.
"""

from ..errors import BadInput
from ..infer import explanations
from ..infer import holds
from ..infer.belief import Belief
from ..infer.case import read
from ..infer.figures import parts
from ..infer.model import Model
from ..infer.scaled_float import SCALED_ONE
from ..infer.variations import Variations
from ..plan.answer import live_suspects
from ..plan.answer import reason

_EXPLANATIONS = 64


def reasoned(case: dict, assignments: list, plan: bool = True) -> dict:
    """Return what a case says, averaged over `assignments` ({body: identity} each); see `mixups.assignments`.

    The next moves are those of the likeliest assignment: where it matters which it is, the tests made it
    stand out already, and where it does not the moves are the same.
    """
    if not assignments:
        return reason(case, plan=plan)
    cases, beliefs, possible = [], [], []
    for assignment in assignments:
        try:
            one = as_if(case, assignment)
            beliefs.append(Belief(Model(read(one))))
            cases.append(one)
            possible.append(assignment)
        except BadInput:
            pass  # at rates of 0 and 1 the readings rule this assignment out
    if not cases:
        return reason(case, plan=plan)
    shares = _shares(beliefs)
    best = 0
    for n in range(len(shares)):
        if shares[n] > shares[best]:
            best = n
    answer = reason(cases[best], plan=plan)
    answer["way"] = possible[best]
    merged, chances, clear = {}, {}, 0.0
    for n in range(len(cases)):
        belief = beliefs[n]
        for entry in explanations.named(belief, explanations.likeliest(belief, _EXPLANATIONS)):
            key = tuple(sorted(entry["causes"]))
            merged[key] = merged.get(key, 0.0) + shares[n] * entry["probability"]
        marginals = belief.marginals()
        for cause in range(len(marginals)):
            name = belief.model.names[cause]
            chances[name] = chances.get(name, 0.0) + shares[n] * marginals[cause]
        clear += shares[n] * belief.absent(belief.model.live())
    listed = sorted([(-int(merged[key] + 0.5), key) for key in merged])
    answer["explanations"] = [{"causes": list(key), "probability": -less} for less, key in listed if less]
    answer["causes"] = [
        {"cause": name, "probability": -less}
        for less, name in sorted([(-parts(chances[name]), name) for name in chances])
    ]
    answer["clear"] = parts(clear)
    mixture = _Mixture([Variations(belief) for belief in beliefs])
    answer.update(holds.judged(answer, mixture, beliefs[best].model.case, live_suspects(beliefs[best])))
    answer.pop("unlisted", None)
    return answer


def likeliest(case: dict, result: dict) -> dict:
    """Return the case that the next moves of a result are for: that of the likeliest assignment."""
    return as_if(case, result["way"]) if "way" in result else case


def as_if(case: dict, assignment: dict) -> dict:
    """Return the case as it would be if each body were the unit that `assignment` says; its name stays.

    A body that is back in the place of its unit was out of it all the same: nothing blocks it since.
    """
    body_of = {assignment[body]: body for body in assignment}
    copy = _renamed(case, body_of)
    waiting = sorted(assignment)
    for n in range(len(case["tests"])):
        waiting = _handled(copy["tests"][n], case["tests"][n]["fitted"], waiting)
    if "now" in case:
        _handled(copy["now"], case["now"]["fitted"], waiting)
    priors, units = {}, []
    for unit in case["units"]:
        if unit["id"] in body_of:
            priors[body_of[unit["id"]]] = unit.get("prior")
    for unit in case["units"]:
        if unit["id"] in body_of:
            continue
        entry = dict(unit)
        if unit["id"] in priors:
            entry.pop("prior", None)
            if priors[unit["id"]] is not None:
                entry["prior"] = priors[unit["id"]]
        units.append(entry)
    copy["units"] = units
    return copy


def _handled(done: dict, fitted: dict, bodies: list) -> list:
    """Note the places of bodies that are fitted for the first time as cleaned; return the other bodies."""
    for place in sorted(fitted):
        if fitted[place] in bodies and place not in done["cleaned"]:
            done["cleaned"].append(place)
    return [body for body in bodies if body not in [fitted[place] for place in fitted]]


def _renamed(value, names):
    """Return a deep copy with ids replaced, also where a cause names one."""
    if isinstance(value, dict):
        return {key: _renamed(value[key], names) for key in value}
    if isinstance(value, list):
        return [_renamed(item, names) for item in value]
    if isinstance(value, str):
        if value in names:
            return names[value]
        if value.startswith("unit:") and value[5:] in names:
            return "unit:" + names[value[5:]]
    return value


class _Mixture:
    """The variations of all assignments together: each moves how likely an assignment is, too."""

    def __init__(self, sources: list):
        self.sources = sources
        self._known = {}

    def chance(self, what: str, factor: float, event: tuple) -> float:
        """Return the chance of an event as Variations.chance does."""
        key = (what, factor)
        if key not in self._known:
            self._known[key] = _normalised([source.weight(what, factor) for source in self.sources])
        total = 0.0
        for n, share in enumerate(self._known[key]):
            total = total + share * self.sources[n].chance(what, factor, event)
        return total


def _shares(beliefs: list) -> list:
    """Return the posterior chance of each assignment; the readings' constant factors are the same in all."""
    weights = []
    for belief in beliefs:
        weight = SCALED_ONE * belief.total
        for cause in range(len(belief.model.names)):
            if cause not in belief.bit:
                absent, present = belief.model.weights(cause, SCALED_ONE, belief.model.rates)
                weight = weight * (absent + present)
        weights.append(weight)
    return _normalised(weights)


def _normalised(weights: list) -> list:
    total = SCALED_ONE * 0.0
    for weight in weights:
        total = total + weight
    return [weight / total for weight in weights]
