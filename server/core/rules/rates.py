"""An assumption is a chance between 0 and 100 %, and leaves the readings something to say."""

from ..evidence.comeback import MOST_FACTOR
from ..evidence.comeback import MOST_MONTHS
from ..evidence.readings import MOST_MINUTES
from ..evidence.readings import rate_problem
from ..infer.case import RATES
from ..infer.cost import MOST_MONEY
from ..messages import message
from .refusal import refusal

_WHOLE = 1000000


def refuse(fold, draft, job):
    """Refuse a rate nobody knows or none can be, a certain confidence, a reach beyond a working day."""
    kind, data = draft["kind"], draft["data"]
    if kind == "reach_set" and data["minutes"] > MOST_MINUTES:
        return _refusal(
            message("rules-rates-minutes", count=data["minutes"]),
            message("rules-rates-minutes-do", most=MOST_MINUTES),
        )
    if (
        kind == "money_set"
        and max(data["labour_per_hour"], data["part_price"], data["wrong_purchase"]) > MOST_MONEY
    ):
        return _refusal(message("rules-rates-money", sort=job.sort.identity), message("rules-rates-money-do"))
    if kind == "comeback_set" and not (
        1 <= data["factor"] <= MOST_FACTOR and 1 <= data["months"] <= MOST_MONTHS
    ):
        do = message("rules-rates-comeback-do", factor=MOST_FACTOR, months=MOST_MONTHS)
        return _refusal(message("rules-rates-comeback"), do)
    if kind not in ("rates_set", "rates_learned"):
        return None
    for name in sorted(data["rates_ppm"]):
        if name not in RATES:
            return _refusal(message("rules-rates-unknown", name=name), message("rules-rates-unknown-do"))
        wanted = rate_problem(name, data["rates_ppm"][name])
        if wanted:
            return _refusal(message("rules-rates-chance"), message("rules-rates-chance-do", wanted=wanted))
    if data.get("confidence_ppm", 0) >= _WHOLE:
        return _refusal(message("rules-rates-certain"), message("rules-rates-certain-do"))
    return None


def _refusal(sentence, do) -> dict:
    return refusal("rates", message("rules-rates-title"), sentence, do)
