"""What other evidence than tests and meters says of a cause: a factor on its prior odds.

A trouble code whose failure type reads 'open' speaks for the circuit more than for the unit; no
noisy-OR reading carries that. Odds times a likelihood ratio is Bayes' rule in its odds form.
"""

from collections import namedtuple

from ..errors import BadInput
from ..messages import message
from . import validate

# `number` is that of the unit, position or group; 0 for the control unit.
Likelihood = namedtuple("Likelihood", ("kind", "number", "factor"))
Prior = namedtuple("Prior", ("kind", "number", "chance"))

_MOST = 1000.0
_WANTED = message("case-factor", least="0.001", most="1000")


def read(raw, field: str, where: dict, groups: list, who: dict) -> list:
    """Return the checked likelihoods; `where`, `groups` and `who` say which names the case has."""
    likelihoods = []
    named = []
    for n, entry in enumerate(validate.a_list(raw, field)):
        here = "{}[{}]".format(field, n)
        validate.an_object(entry, here, ["cause", "factor"], ["cause", "factor"])
        cause = entry["cause"]
        kind, number = _cause(cause, where, groups, who)
        if kind is None:
            raise BadInput(here + ".cause", cause, message("case-cause"))
        if cause in named:
            raise BadInput(here + ".cause", cause, message("case-cause-once"))
        named.append(cause)
        factor = validate.a_number(entry["factor"], here + ".factor", 1 / _MOST, _MOST, _WANTED)
        likelihoods.append(Likelihood(kind, number, factor))
    return likelihoods


def read_priors(raw, field: str, where: dict, groups: list) -> list:
    """Return the checked priors of causes that are no unit's; a unit has its own."""
    priors = []
    named = []
    for n, entry in enumerate(validate.a_list(raw, field)):
        here = "{}[{}]".format(field, n)
        validate.an_object(entry, here, ["cause", "prior"], ["cause", "prior"])
        cause = entry["cause"]
        kind, number = _cause(cause, where, groups, {})
        if kind is None:
            raise BadInput(here + ".cause", cause, message("case-prior-cause"))
        if cause in named:
            raise BadInput(here + ".cause", cause, message("case-cause-once"))
        named.append(cause)
        priors.append(Prior(kind, number, validate.a_chance(entry["prior"], here + ".prior")))
    return priors


def _cause(cause, where: dict, groups: list, who: dict) -> tuple:
    """Return (kind, number) of a cause by name, or (None, 0)."""
    if not isinstance(cause, str):
        return None, 0
    if cause == "control":
        return "control", 0
    kind, _, what = cause.partition(":")
    if kind in ("circuit", "blocked") and what in where:
        return kind, where[what]
    if kind == "feed" and what in groups:
        return kind, groups.index(what)
    if kind == "unit" and what in who:
        return kind, who[what]
    return None, 0


def tilted(prior: float, factor: float) -> float:
    """Return a probability whose odds are `factor` times those of `prior`; 0 and 1 stay what they are."""
    return prior * factor / (prior * factor + (1.0 - prior))


def _first(model) -> dict:
    """Return the causes of each kind, by number; of those that were repaired the first."""
    return {
        "unit": model.unit,
        "blocked": model.blocked,
        "circuit": [rows[0] for rows in model.circuits],
        "feed": [rows[0] for rows in model.feeds],
        "control": [model.controls[0]],
    }


def tilt(model) -> None:
    """Give the causes of a model the priors of its case, and move them by its likelihoods.

    Only the first circuit, feed or control is moved: what a repair starts afresh is another cause,
    of which an earlier job and an earlier code say nothing.
    """
    causes = _first(model)
    for prior in model.case.priors:
        model.priors[causes[prior.kind][prior.number]] = prior.chance
    for likelihood in model.case.likelihoods:
        cause = causes[likelihood.kind][likelihood.number]
        model.priors[cause] = tilted(model.priors[cause], likelihood.factor)
