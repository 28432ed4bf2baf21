"""The job that the unit comes from is closed: nothing about it is still being found out."""

from .check import check


def look(state, case):
    """Hold a unit whose job is open, and one that comes from no job."""
    if case["unit"] is None or case["unknown"]:
        return None
    if case["job"] is None:
        return check("hold", "No job", "No job on record had it.")
    vehicle = state.vehicles[case["job"]["vehicle"]]["name"]
    if case["job"]["closed"] is None:
        return check("hold", "Its job is not closed", "The job on {} is still open.".format(vehicle))
    return check("pass", "Job closed", "The job on {} is closed.".format(vehicle))
