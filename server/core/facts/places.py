"""Each unit at exactly one place, each position with at most one unit; two places on record are a dispute."""

from ..log import envelope
from ..state.kept_facts import new_unit
from .conflicts import flag


def fitted_on(state, job) -> dict:
    """Return the units that sit at the positions of a job, by position."""
    holds = state.vehicles[job["vehicle"]]["holds"]
    return {each["id"]: holds[each["id"]] for each in job["positions"] if holds.get(each["id"])}


def put(state, event, job, unit, place, position, how):
    """Take the unit from where it was and put it where the fact says."""
    if unit["place"] == "fitted" and unit["vehicle"]:
        holds = state.vehicles[unit["vehicle"]]["holds"]
        if holds.get(unit["position"]) == unit["id"]:
            holds[unit["position"]] = None
    vehicle = job["vehicle"] if job and place == "fitted" else None
    state.place_unit(
        unit, place, vehicle, position, job["id"] if job and place in ("fitted", "out") else None
    )
    if vehicle:
        state.vehicles[vehicle]["holds"][position] = unit["id"]
    if job:
        state.join_unit(unit, job["id"])
    note_move(event, job, unit, place, how)


def note_move(event, job, unit, what, how):
    """Put a change on the trail of a unit; `n` is as which entry of the job, None outside jobs.

    Where the entry names another unit, which was found there instead, the move has that as `instead`. One
    that contradicts has in `then` how many entries each job of the unit had that was open.
    """
    data = event["data"]
    unit["moves"].append(
        {
            "event": envelope.identity(event),
            "kind": event["kind"],
            "n": job["entries"] if job else None,
            "what": what,
            "position": data.get("position"),
            "code": data.get("code", ""),
            "note": data.get("reason", data.get("note", "")),
            "job": event["job"],
            "how": how,
            "at": event["at"],
            "actor": event["actor"],
        }
    )
    if data.get("unit", unit["id"]) != unit["id"]:
        unit["moves"][-1]["instead"] = data["unit"]


def disputed(unit):
    """Tell whether two places are on record of a unit."""
    return len(unit["claims"]) > 0


def claim_of(place, vehicle, position):
    """Return a place that someone says a unit is at."""
    return {"place": place, "vehicle": vehicle, "position": position}


def contradict(state, event, job, identity, claim):
    """Put both claims on record: what the state said, and what this fact says."""
    unit = state.units[identity]
    if not unit["claims"]:
        state.claim_unit(unit, claim_of(unit["place"], unit["vehicle"], unit["position"]))
    state.claim_unit(unit, claim)
    if job:
        state.join_unit(unit, job["id"])
    note_move(event, job, unit, "disputed", event["data"].get("how", "tapped"))
    open_jobs = [each for each in unit["jobs"] if not state.job_line(each)["closed"]]
    unit["moves"][-1]["then"] = {each: state.jobs[each]["entries"] for each in open_jobs}
    flag(state, event, job, identity, "place", None)


def known(state, event, job):
    """Return the unit an event names; one that nobody introduced is kept, with a flag."""
    identity = event["data"]["unit"]
    if identity not in state.units:
        state.add_unit(new_unit(identity))
        contradict(state, event, job, identity, claim_of("out", None, None))
    return state.units[identity]
