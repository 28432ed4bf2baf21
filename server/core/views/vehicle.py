"""The vehicles on record, with what a next job on one of them starts from."""

from ..evidence import readings
from ..parts import sorts


def vehicles_view(state) -> list[dict]:
    """Return every vehicle in short, the one whose job was opened last first."""
    listed = []
    for identity in state.vehicles:
        vehicle = state.vehicles[identity]
        lines = [state.job_line(job) for job in vehicle["jobs"]]
        last = lines[-1]
        sort = sorts.by_layout(last["layout"])
        still_open = [line["id"] for line in lines if not line["closed"]]
        listed.append(
            {
                "id": identity,
                "name": vehicle["name"],
                "vin": vehicle["vin"],
                "layout": last["layout"],
                "part": last["part"],
                "positions": [readings.as_set(last, position) for position in last["positions"]],
                "called": {position["id"]: sort.called(position) for position in last["positions"]},
                "opened_at": last["opened_at"],
                "open_job": still_open[-1] if still_open else "",
            }
        )
    return sorted(listed, key=lambda vehicle: (-vehicle["opened_at"], vehicle["id"]))
