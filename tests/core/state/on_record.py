"""A state to ask jobs and units of, out of what both hosts of the core say is on record."""

from server.core.state.job import Job
from server.core.state.job import known_job
from server.core.state.state import State


def state_of(core) -> State:
    """Return the state of the core; the fixture has compared it between the two hosts."""
    state = State()
    for name, value in core("state").items():
        setattr(state, name, value)
    for unit in state.units.values():
        state.index.add_unit(unit)
    state.index.renew_conflicts(state.conflicts)
    return state


def job_of(driver) -> Job:
    """Return the job of a driver as it stands now."""
    return known_job(state_of(driver.core), driver.job)
