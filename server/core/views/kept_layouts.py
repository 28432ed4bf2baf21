"""The layouts to open a job on: ready-made ones, and those drawn for a model of vehicle."""

from ..messages import message
from ..parts import drawn
from ..parts import layouts
from ..parts import sorts
from . import folding

MOST = 12


def layouts_view(state) -> list[dict]:
    """Return the ready-made layouts, then the `MOST` last drawn ones, each for its model the latest.

    A drawn one has `model` and `drawn`, from which it can be drawn on; two spellings of a model are one.
    """
    listed = sorts.all_layouts()
    for each in listed:
        each["layout"], each["model"], each["drawn"] = each["id"], "", []
    seen = {}
    for at, vehicle in _with_model(state):
        if len(seen) == MOST:
            break
        line = state.job_line(vehicle["jobs"][at])
        sort = sorts.by_layout(line["layout"])
        words = folding.folded(vehicle["model"], " ").split()
        key = " ".join(words) + "/" + sort.identity
        if key in seen:
            continue
        seen[key] = True
        listed.append(
            {
                "id": "kept-" + str(len(seen)),
                "layout": line["layout"],
                "sort": sort.identity,
                "name": message("views-layout-kept", model=vehicle["model"], count=len(line["positions"])),
                "model": vehicle["model"],
                "positions": line["positions"],
                "drawn": drawn.as_drawn(line["positions"]),
                "called": {},
                "outline": sort.outline,
                "complaints": list(sort.complaints),
            }
        )
    return listed


def _with_model(state) -> list[tuple]:
    """Return (which of its jobs was drawn last, vehicle) of those with a model, the latest opened first."""
    found = []
    for identity in sorted(state.vehicles):
        vehicle = state.vehicles[identity]
        if not vehicle.get("model"):
            continue
        for at in range(len(vehicle["jobs"]) - 1, -1, -1):
            line = state.job_line(vehicle["jobs"][at])
            own = line["layout"] == drawn.of_job(sorts.by_layout(line["layout"]))
            if own and layouts.are_placed(line["positions"]):
                found.append((-line["opened_at"], identity, at))
                break
    return [(at, state.vehicles[identity]) for _, identity, at in sorted(found)]
