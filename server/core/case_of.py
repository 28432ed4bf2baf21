"""From the state of a job to the case that the reasoning works on."""

from . import exchange
from .wiring import CHECKS

_SHOWS_COMES_AND_GOES = 0.5  # design default for a fault that comes and goes; common practice


def case_of(state, job: dict) -> dict:
    """Return the case (README of the command `reason` has its form) of a job as it stands."""
    tests = [_test(job, test) for test in job["tests"]]
    now = {"fitted": {}, "cleaned": job["pending"]["cleaned"],
           "repaired": job["pending"]["repaired"]}  # fmt: skip
    holds = state.vehicles[job["vehicle"]]["holds"]
    for position in job["positions"]:
        if holds.get(position["id"]):
            now["fitted"][position["id"]] = holds[position["id"]]
    case = {
        "positions": [_position(position) for position in job["positions"]],
        "units": _units(state, job, now["fitted"]),
        "tests": tests,
        "meter": _meter(job),
        "rates": _rates(job),
        "confidence": job["confidence_ppm"] / 1000000,
    }
    if tests:
        case["now"] = now
    return case


def _position(position: dict) -> dict:
    return {
        "id": position["id"],
        "name": position["name"],
        "group": position["group"],
        "reach_minutes": position["reach_minutes"],
    }


def _units(state, job, fitted) -> list[dict]:
    """Return every unit that the tests saw, that sits on the vehicle now, or that is at hand."""
    wanted = {}
    for test in job["tests"]:
        for position in test["fitted"]:
            wanted[test["fitted"][position]] = True
    for position in fitted:
        wanted[fitted[position]] = True
    for identity in state.units:
        unit = state.units[identity]
        if unit["claims"]:
            continue
        if unit["place"] == "stock" or (unit["place"] == "out" and unit["job"] == job["id"]):
            wanted[identity] = True
    units = []
    for identity in sorted(wanted):
        unit = state.units[identity]
        at_hand = unit["place"] in ("out", "stock") and not unit["claims"]
        units.append(
            {
                "id": identity,
                "name": exchange.short_name(state, job, identity),
                "part": unit["part"],
                "available": at_hand,
            }
        )
    return units


def _test(job, test) -> dict:
    """Return one test; what is in dispute says nothing, an empty position counts as unplugged."""
    unplugged, silent, fitted = [], list(test["silent"]), {}
    for position in job["positions"]:
        place = position["id"]
        if place in test["disputed"] and place not in silent:
            silent.append(place)
        if place in test["unplugged"] or place not in test["fitted"]:
            unplugged.append(place)
        else:
            fitted[place] = test["fitted"][place]
    faulted = [place for place in test["faulted"] if place not in silent]
    return {
        "fitted": fitted,
        "faulted": faulted,
        "cleaned": test["cleaned"],
        "repaired": test["repaired"],
        "unplugged": [place for place in unplugged if place not in silent],
        "silent": sorted(silent),
        "heard": test["heard"],
    }


def _meter(job) -> list[dict]:
    """Return one reading per circuit and repair of it that was gone through.

    A circuit reads bad once one of its checks does, and good once all of them do: half a check
    proves nothing. `generation` counts the circuit anew after each repair.
    """
    readings = []
    for position in job["positions"]:
        place = position["id"]
        seen = {}
        for entry in job["meter"]:
            if entry["position"] == place:
                before = job["repairs"][: entry["repairs_before"]]
                repairs = len([r for r in before if r["cause"] == "circuit:" + place])
                seen.setdefault(repairs + 1, {})[entry["check"]] = entry["reads"]
        for generation in sorted(seen):
            reads = seen[generation]
            verdict = None
            if "bad" in [reads[check] for check in sorted(reads)]:
                verdict = "bad"
            elif len([check for check in CHECKS if reads.get(check["id"]) == "good"]) == len(CHECKS):
                verdict = "good"
            if verdict:
                readings.append({"position": place, "reads": verdict, "generation": generation})
    return readings


def _rates(job) -> dict:
    rates = {}
    if job["comes_and_goes"]:
        rates["shows"] = _SHOWS_COMES_AND_GOES
    for name in sorted(job["rates"]):
        rates[name] = job["rates"][name] / 1000000
    return rates
