"""Folding of evidence: tests, meter readings, cleaning, repairs, and how parts were fitted."""

from ..log import envelope


def _test_run(state, event, job):
    """Keep the test with what sat where; places in dispute are noted, their readings count for nobody."""
    data = event["data"]
    holds = state.vehicles[job["vehicle"]]["holds"]
    fitted = {}
    for position in job["positions"]:
        unit = holds.get(position["id"])
        if unit:
            fitted[position["id"]] = unit
    job["tests"].append(
        {
            "event": envelope.identity(event),
            "at": event["at"],
            "heard": data["heard"],
            "faulted": sorted(data["faulted"]),
            "silent": sorted(data["silent"]),
            "unplugged": sorted(data["unplugged"]),
            "codes": data["codes"],
            "came_and_went": data["came_and_went"],
            "note": data["note"],
            "fitted": fitted,
            "disputed": _disputed_positions(state, job),
            "cleaned": job["pending"]["cleaned"],
            "repaired": job["pending"]["repaired"],
        }
    )
    job["pending"] = {"cleaned": [], "repaired": []}
    job["plugged_off"] = [place for place in sorted(data["unplugged"]) if place in fitted]
    if data["came_and_went"] and data["heard"]:
        job["comes_and_goes"] = True
    if job["move"] and _reached(job["move"], holds):
        job["move"] = None


def _reached(move, holds):
    """Tell whether every unit of a move sits where the move wants it; a test then ends the move."""
    for position in move["fitted"]:
        if holds.get(position) != move["fitted"][position]:
            return False
    return True


def _cleaned(state, event, job):
    job["walk"] = None
    _once(job["pending"]["cleaned"], event["data"]["position"])


def _circuit_measured(state, event, job):
    data = event["data"]
    job["meter"].append(
        {
            "position": data["position"],
            "check": data["check"],
            "value": data["value"],
            "reads": data["reads"],
            "repairs_before": len(job["repairs"]),
        }
    )


def _circuit_repaired(state, event, job):
    data = event["data"]
    job["walk"] = None
    _once(job["pending"]["repaired"], data["cause"])
    job["repairs"].append({"cause": data["cause"], "what": data["what"], "at": event["at"]})


def _connector_locked(state, event, job):
    place = event["data"]["position"]
    job["locked"][place] = True
    job["plugged_off"] = [each for each in job["plugged_off"] if each != place]


def _fit_checked(state, event, job):
    data = event["data"]
    job["fit_checks"][data["position"]] = {"unit": data["unit"], "checks": data["checks"]}


def _disputed_positions(state, job):
    """Return the positions at which a unit sits, or is claimed to sit, whose place or name is in doubt."""
    found = []
    for unit in state.claimed_at(job["vehicle"]):
        for claim in state.units[unit]["claims"]:
            if claim["vehicle"] == job["vehicle"]:
                _once(found, claim["position"])
    for unit in state.sharing_a_label():
        if state.units[unit]["place"] == "fitted" and state.units[unit]["vehicle"] == job["vehicle"]:
            _once(found, state.units[unit]["position"])
    return sorted(found)


def _once(items, item):
    if item not in items:
        items.append(item)


HANDLERS = {
    "test_run": _test_run,
    "cleaned": _cleaned,
    "circuit_measured": _circuit_measured,
    "circuit_repaired": _circuit_repaired,
    "connector_locked": _connector_locked,
    "fit_checked": _fit_checked,
}
