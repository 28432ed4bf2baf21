"""What the core is asked about a kept log: the same questions at the commit that made it and ever after.

Only `ask(op, **arguments)` is used, the core's one door, so that this runs at every commit.
"""

END_OF_TIME = 2**52


def answers(ask, entries: list[dict]) -> dict:
    """Fold a log and return all that is answered of it, by question."""
    ask("reset", events=entries)
    state = ask("state")
    jobs, units = sorted(state["jobs"]), sorted(state["units"])
    found = {
        "state": state,
        "state sha256": sha256(ask, state),
        "jobs": ask("jobs"),
        "vehicles": ask("vehicles"),
        "units": ask("units"),
        "unlabelled": ask("unlabelled"),
        "conflicts": ask("conflicts"),
        "waiting": ask("waiting"),
        "decided": ask("decided", start=0, end=END_OF_TIME),
        "find": ask("find", text="ST-0417"),
        "unit": {unit: ask("unit", unit=unit) for unit in units if state["units"][unit]["code"]},
    }
    for op in ("job", "reasoned", "evidence", "report", "assumptions"):
        found[op] = {job: ask(op, job=job) for job in jobs}
    found["record_told"] = {
        unit: ask("record_told", unit=unit, jobs=state["units"][unit]["jobs"]) for unit in found["unit"]
    }
    return found


def sha256(ask, value) -> str:
    """Return the SHA-256 of a value's canonical text."""
    return ask("canonical", value=value)["sha256"]


def short(ask, entries: list[dict]) -> dict:
    """Fold a log and return the little that says whether all is the same: for a host that is slow."""
    ask("reset", events=entries)
    state = ask("state")
    return {
        "state sha256": sha256(ask, state),
        "jobs": ask("jobs"),
        "reasoned": {job: ask("reasoned", job=job) for job in sorted(state["jobs"])},
    }
