"""The job that the unit comes from is closed: nothing about it is still being found out."""

from ..messages import message
from .check import check


def look(state, case):
    """Hold a unit whose job is open, and one that comes from no job."""
    if case["unit"] is None or case["unknown"]:
        return None
    if case["job"] is None:
        return check("hold", message("returns-job-none-title"), message("returns-job-none"))
    vehicle = state.vehicles[case["job"]["vehicle"]]["name"]
    if case["job"]["closed"] is None:
        return check("hold", message("returns-job-open-title"), message("returns-job-open", vehicle=vehicle))
    return check("pass", message("returns-job-title"), message("returns-job", vehicle=vehicle))
