"""What somebody set for a job: assumptions, minutes, prices, and whether the fault comes and goes."""

from .fields import Confidence
from .fields import Count
from .fields import Flag
from .fields import Minutes
from .fields import Rates
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
        tells=lambda names, data: (
            "The fault comes and goes." if data["value"] else "The fault does not come and go."
        ),
    ),
    Kind(
        "rates_set",
        Rates("rates_ppm"),
        Confidence("confidence_ppm"),
        does=_rates_set,
        tells="Assumptions changed.",
    ),
    Kind(
        "code_weight_set",
        Position("position"),
        Flag("on"),
        does=_code_weight_set,
        tells=lambda names, data: "The failure type of the code at {} {} towards the cause.".format(
            names.position(data["position"]), "counts" if data["on"] else "does not count"
        ),
    ),
    Kind(
        "reach_set",
        Position("position"),
        Minutes("minutes"),
        does=_reach_set,
        tells="{position}: {minutes} until a hand is on it.",
    ),
    Kind(
        "money_set",
        Count("labour_per_hour"),
        Count("part_price"),
        Count("wrong_purchase"),
        does=_money_set,
        tells="Labour and prices set.",
    ),
)
