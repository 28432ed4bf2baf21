"""An assumption is a chance between 0 and 100 %, and leaves the readings something to say."""

from ..evidence.readings import MOST_MINUTES
from ..evidence.readings import rate_problem
from ..infer.case import RATES
from ..infer.cost import MOST_MONEY
from .refusal import refusal

_WHOLE = 1000000


def refuse(fold, draft, job):
    """Refuse a rate nobody knows or none can be, a certain confidence, a reach beyond a working day."""
    kind, data = draft["kind"], draft["data"]
    if kind == "reach_set" and data["minutes"] > MOST_MINUTES:
        return _refusal("{} minutes is too long.".format(data["minutes"]), "Give at most 600 minutes.")
    if (
        kind == "money_set"
        and max(data["labour_per_hour"], data["part_price"], data["wrong_purchase"]) > MOST_MONEY
    ):
        return _refusal("That is more money than {} costs.".format(job.sort.a_unit), "Give the figure again.")
    if kind != "rates_set":
        return None
    for name in sorted(data["rates_ppm"]):
        if name not in RATES:
            return _refusal("There is no assumption called {}.".format(name), "Go back and choose one.")
        wanted = rate_problem(name, data["rates_ppm"][name])
        if wanted:
            return _refusal("This can't be such a chance.", "Give a figure {}.".format(wanted))
    if data["confidence_ppm"] >= _WHOLE:
        return _refusal("No test makes anything certain.", "Give a confidence below 100 %.")
    return None


def _refusal(sentence, do) -> dict:
    return refusal("rates", "This can't be assumed", sentence, do)
