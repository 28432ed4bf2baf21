"""The figures as CSV: one line each, with the names of the JSON; every number is a whole one."""

from collections.abc import Iterator
from typing import Any

from server.web.csv_files import csv_text

COLUMNS = ("figure", "name", "place", "value", "low", "high", "default", "count", "of")


def as_csv(found: dict[str, Any]) -> str:
    """Returns the figures as the text of a CSV file."""
    return csv_text(COLUMNS, ([str(line.get(column, "")) for column in COLUMNS] for line in _lines(found)))


def _lines(found: dict[str, Any]) -> Iterator[dict[str, Any]]:
    for each in found["rates"]:
        yield {"figure": "rate_ppm", "name": each["id"], "value": each["value_ppm"], "low": each["low_ppm"],
               "high": each["high_ppm"], "default": each["default_ppm"],
               "count": _whole(each["hits_x100"]), "of": each["tries"]}  # fmt: skip
    for each in found["minutes"]:
        yield _timed("minutes_x100", each["id"], "", each) | {"default": each["default_x100"]}
    for each in found["reach"]:
        yield _timed("reach_x100", each["layout"], each["position"], each)
    for each in found["models"]:
        yield _timed("reach_of_model_x100", each["name"], "", each)
    for each in found["reliability"]:
        yield {"figure": "claimed_per_mille", "name": f"{each['start']}-{each['end'] - 1}",
               "value": each["right"], "low": each["low"], "high": each["high"],
               "default": _whole(each["expected"]), "of": each["number"]}  # fmt: skip
    yield {"figure": "comebacks", "value": len(found["comebacks"]), "of": len(found["repaired"])}
    yield {"figure": "comebacks_open", "count": len(found["comebacks_open"])}
    for kind, place, job in found["causes"]:
        yield {"figure": "cause", "name": kind, "place": place, "value": job}
    for job, took, plan in found["work"]:
        yield {"figure": "job_minutes_x100", "name": job, "value": took, "default": plan}
    for job, bought, saved in found["parts"]:
        yield {"figure": "parts", "name": job, "value": bought, "count": saved}
    for decision, reason, count, _ in found["returns"]:
        yield {"figure": "returns", "name": decision, "place": reason, "count": count}
    for why, jobs in sorted(found["left_out"].items()):
        yield {"figure": "left_out", "name": why, "count": len(jobs)}
    yield {"figure": "left_out", "name": "times", "count": found["times_left_out"]}


def _whole(hundredths: int) -> int:
    """Returns the nearest whole number: a spreadsheet that writes 3,4 takes 3.4 for a day in April."""
    return (hundredths + 50) // 100


def _timed(figure: str, name: str, place: str, spread: dict[str, Any]) -> dict[str, Any]:
    return {"figure": figure, "name": name, "place": place, "value": spread["median_x100"],
            "low": spread["low_x100"], "high": spread["high_x100"], "count": spread["count"]}  # fmt: skip
