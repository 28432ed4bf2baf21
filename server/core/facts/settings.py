"""What somebody set for a job: assumptions, minutes, prices, and whether the fault comes and goes."""

from ..messages import message
from .amounts import Confidence
from .amounts import Count
from .amounts import Minutes
from .amounts import Rates
from .fields import Flag
from .kind import Kind
from .naming import Position


def _comes_and_goes_set(state, event, job) -> None:
    job["comes_and_goes"] = event["data"]["value"]


def _rates_set(state, event, job) -> None:
    job["rates"] = event["data"]["rates_ppm"]
    if event["data"]["confidence_ppm"]:
        job["confidence_ppm"] = event["data"]["confidence_ppm"]


def _code_weight_set(state, event, job) -> None:
    job["code_weights"][event["data"]["position"]] = event["data"]["on"]


def _reach_set(state, event, job) -> None:
    job["reach"][event["data"]["position"]] = event["data"]["minutes"]


def _comeback_set(state, event, job) -> None:
    job["comeback"] = {"factor": event["data"]["factor"], "months": event["data"]["months"]}


def _money_set(state, event, job) -> None:
    data = event["data"]
    job["money"] = {
        name: data[name] for name in ("labour_per_hour", "part_price", "wrong_purchase") if data[name]
    }


KINDS = (
    Kind(
        "comes_and_goes_set",
        Flag("value"),
        does=_comes_and_goes_set,
        tells=lambda names, data: message("facts-comes-and-goes" if data["value"] else "facts-stays"),
    ),
    Kind(
        "rates_set",
        Rates("rates_ppm"),
        Confidence("confidence_ppm"),
        does=_rates_set,
        tells=("facts-rates-set",),
    ),
    Kind(
        "code_weight_set",
        Position("position"),
        Flag("on"),
        does=_code_weight_set,
        tells=lambda names, data: message(
            "facts-code-counts" if data["on"] else "facts-code-does-not-count",
            position=names.position(data["position"]),
        ),
    ),
    Kind(
        "reach_set",
        Position("position"),
        Minutes("minutes"),
        does=_reach_set,
        tells=("facts-reach-set", "position", "minutes"),
    ),
    Kind(
        "comeback_set",
        Count("factor"),
        Count("months"),
        does=_comeback_set,
        tells=("facts-comeback-set", "factor", "months"),
    ),
    Kind(
        "money_set",
        Count("labour_per_hour"),
        Count("part_price"),
        Count("wrong_purchase"),
        does=_money_set,
        tells=("facts-money-set",),
    ),
)
