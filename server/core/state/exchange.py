"""The guided exchange: from the plan of a move to its steps, and which of them is next.

Each position is emptied and its unit labelled, then each gets its planned unit and its connector is
locked. Whether a step is done is read off the state, so that a reload or a second phone goes on at
the right place.
"""

from .job import Job


def steps(job: Job) -> list[dict]:
    """Return the steps of the move under way as [{"do", "unit", "position", "done"}].

    `do` is "take" (a spare out of stock), "pull", "fit", "lock" or "check" (a replacement's fit).
    """
    move = job.move
    holds = job.holds
    order = [p["id"] for p in job.positions if p["id"] in move["fitted"]]
    listed = []
    for position in order:
        planned = move["fitted"][position]
        if planned in move["from_stock"]:
            taken = not job.unit(planned).is_in_stock()
            listed.append(_step("take", planned, position, taken))
    for position in _emptied(job, order):
        unit = move["before"].get(position)
        if unit and unit != move["fitted"].get(position):
            labelled = job.unit(unit).is_labelled()
            listed.append(_step("pull", unit, position, holds.get(position) != unit and labelled))
    for position in order:
        unit = move["fitted"][position]
        if move["before"].get(position) == unit and holds.get(position) == unit:
            continue
        in_place = holds.get(position) == unit
        listed.append(_step("fit", unit, position, in_place))
        listed.append(_step("lock", unit, position, in_place and job.is_locked(position)))
        if move["move"] == "replace":
            checked = job.fit_checked_at(position) == unit
            listed.append(_step("check", unit, position, in_place and checked))
    return listed


def _emptied(job: Job, order: list) -> list[str]:
    """Return the positions of a move, then those whose unit it takes without putting another there."""
    planned = [job.move["fitted"][position] for position in order]
    before = job.move["before"]
    return order + [p["id"] for p in job.positions if p["id"] not in order and before.get(p["id"]) in planned]


def current(job: Job) -> tuple | None:
    """Return (step, number from 1, total) of the next step of the move, or None when all are done."""
    listed = steps(job)
    for index in range(len(listed)):
        if not listed[index]["done"]:
            return listed[index], index + 1, len(listed)
    return None


def _step(do, unit, position, done) -> dict:
    return {"do": do, "unit": unit, "position": position, "done": bool(done)}
