"""Reasoning over units that got mixed up: each assignment of identities, weighed by the tests.

For every assignment of identities to the bodies the case is exact: a body's tests are simply tests
of that unit. Before the tests all assignments are alike; afterwards each has the weight of how well it
predicts all readings (Bayes' rule), and every figure is the mean over the assignments with these weights
(`infer/mixture.py`), those of the next moves too. Whether a body is the bad one is answered exactly, though
nobody may ever know which one it was.

An assignment is a list of {body: identity}, one a mix-up in the order of time: what a second mix-up took for
a unit may be a body of the first.
"""

from ..errors import BadInput
from ..infer.belief import Belief
from ..infer.case_form import read
from ..infer.figures import parts
from ..infer.mixture import MixedVariations
from ..infer.mixture import Mixture
from ..infer.model import Model
from ..plan import answer
from ..plan.answer import reason

_EXPLANATIONS = 64


def reasoned(case: dict, assignments: list, plan: bool = True) -> dict:
    """Return what a case says, averaged over `assignments`; see `ways.assignments`.

    "ways" are the assignments that the readings leave possible, the likeliest first, as {"assignment",
    "probability"}; each result of a move has how likely each of them is then.
    """
    if not assignments:
        return reason(case, plan=plan)
    beliefs, possible = [], []
    for assignment in assignments:
        try:
            beliefs.append(Belief(Model(read(as_if(case, assignment)))))
            possible.append(assignment)
        except BadInput:
            pass  # at rates of 0 and 1 the readings rule this assignment out
    if not beliefs:
        return reason(case, plan=plan)
    mixture = Mixture(beliefs)
    entries = mixture.likeliest(_EXPLANATIONS)
    found = answer.concluded(mixture, entries, MixedVariations(mixture), _EXPLANATIONS, plan)
    found["ways"] = [
        {"assignment": possible[n], "probability": parts(mixture.shares[n])} for n in range(len(possible))
    ]
    found["way"] = possible[mixture.best]
    found["identities"] = _identities(mixture, possible)
    return found


def _identities(mixture, assignments: list) -> dict:
    """Return identity -> parts per billion that it is bad, whichever body it is."""
    chances = {}
    for n, assignment in enumerate(assignments):
        marginals = mixture.beliefs[n].marginals()
        for body, identity in traced(assignment):
            bad = mixture.shares[n] * marginals[mixture.model.names.index("unit:" + body)]
            chances[identity] = chances.get(identity, 0.0) + bad
    return {identity: parts(chances[identity]) for identity in chances}


def traced(assignment: list) -> list[tuple]:
    """Return (body, identity) of the bodies there are now; one mixed up again is followed to its unit."""
    pairs = {}
    for bodies in assignment:
        for body in sorted(bodies):
            identity = bodies[body]
            pairs[body] = pairs.pop(identity, identity)
    return sorted(pairs.items())


def likeliest(case: dict, result: dict) -> dict:
    """Return the case as it would be with the likeliest assignment."""
    return as_if(case, result["way"]) if "way" in result else case


def as_if(case: dict, assignment: list) -> dict:
    """Return the case as it would be if each body were the unit that `assignment` says; its name stays."""
    for bodies in assignment:
        case = _as_if(case, bodies)
    return case


def _as_if(case: dict, bodies: dict) -> dict:
    """Do so for one mix-up.

    A body that is back in the place of its unit was out of it all the same: nothing blocks it since.
    """
    body_of = {bodies[body]: body for body in bodies}
    copy = _renamed(case, body_of)
    waiting = sorted(bodies)
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
    if "likelihoods" in copy:
        copy["likelihoods"] = _once(copy["likelihoods"])
    return copy


def _once(likelihoods: list) -> list:
    """Return the likelihoods without what says again of a unit what a code said of it before (priors.py)."""
    found, causes = [], []
    for each in likelihoods:
        if each["cause"] not in causes:
            causes.append(each["cause"])
            found.append(each)
    return found


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
