"""What was heard of units that work on their own: no self-test, and nothing taken apart."""

from ..messages import message
from ..state import contradictions
from .kind import Kind
from .naming import Positions
from .places import fitted_on


def _listened(state, event, job) -> None:
    """Keep what was heard where, with the units that sat there; of a place in dispute nothing is known."""
    fitted = fitted_on(state, job)
    heard = {}
    for name in ("ticks", "silent"):
        for place in event["data"][name]:
            heard[place] = name
    for place in contradictions.disputed_positions(state, job["vehicle"]):
        heard.pop(place, None)
    # Only a job on which somebody listened has the list.
    job.setdefault("listened", []).append(
        {
            "tests_before": len(job["tests"]),
            "fitted": fitted,
            "heard": {place: heard[place] for place in sorted(heard) if place in fitted},
            "repaired": list(job["pending"]["repaired"]),
        }
    )


def _tell_listened(names, data) -> dict:
    said = []
    if data["ticks"]:
        said.append(message("facts-heard-ticks", positions=names.positions(data["ticks"])))
    if data["silent"]:
        said.append(message("facts-heard-nothing", positions=names.positions(data["silent"])))
    if len(said) == 2:
        return message("facts-listened-both", one=said[0], other=said[1])
    return message("facts-listened", found=said[0] if said else message("facts-heard-none"))


KINDS = (
    Kind(
        "listened",
        Positions("ticks"),
        Positions("silent"),
        does=_listened,
        tells=_tell_listened,
    ),
)
