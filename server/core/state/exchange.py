"""The guided exchange: from the plan of a move to its steps, and which of them is next.

Each position is emptied and its unit labelled, then each gets its planned unit, beginning where the
hand is: at the position that was emptied last. All connectors are locked in one go, and after a
replacement everything that hangs is pushed home. Whether a step is done is read off the state, so that
a reload or a second phone goes on at the right place.
"""

from .job import Job


def steps(job: Job) -> list[dict]:
    """Return the steps of the move under way as [{"do", "unit", "positions", "position", "done"}].

    `do` is "take" (a spare out of stock), "pull", "fit", "lock" or "seat" (what hangs is pushed home).
    `positions` are all that a step is about, `position` and `unit` the first of them.
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
    pulls = _pulls(job, order)
    listed += _without_label(job, pulls) + pulls
    moved = [
        p for p in order if move["before"].get(p) != move["fitted"][p] or holds.get(p) != move["fitted"][p]
    ]
    for position in reversed(moved):
        unit = move["fitted"][position]
        listed.append(_step("fit", unit, position, holds.get(position) == unit))
    listed.extend(_last(job, moved))
    return listed


def goes_round(fitted: dict, holds: dict) -> bool:
    """Tell whether units change places: what makes room at some position comes back to it.

    `fitted` says what each position gets, `holds` what each had before. Without such a ring
    units only come in from outside, or move on to where those make room.
    """
    at = {holds[place]: place for place in sorted(holds) if holds[place]}
    for position in sorted(fitted):
        here: str | None = position
        for _ in fitted:
            here = at.get(fitted[here], "")
            if here not in fitted:
                break
            if here == position:
                return True
    return False


def _pulls(job: Job, order: list) -> list[dict]:
    """Return the steps that empty positions: of what sat there as the move began, then of what came since."""
    before, found = job.move["before"], []
    for position in _emptied(job, order):
        unit = before.get(position)
        if unit and unit != job.move["fitted"].get(position):
            out = job.holds.get(position) != unit
            found.append(_step("pull", unit, position, out and job.unit(unit).is_labelled()))
    return found + [_step("pull", unit, position, False) for position, unit in _in_the_way(job)]


def _without_label(job: Job, pulls: list) -> list[dict]:
    """Return the steps that label what else lies in the hand without one.

    Nothing is pulled before that, and without one a unit only goes straight back to where it was pulled.
    """
    to_pull = [each["unit"] for each in pulls if not each["done"]]
    pulled, planned, found = [each["unit"] for each in pulls], job.move["fitted"], []
    for identity in job.in_hand():
        unit = job.unit(identity)
        if unit.is_labelled() or identity in pulled:
            continue
        goes = [position for position in planned if planned[position] == identity]
        if to_pull or (goes and goes[0] != unit.pulled_from):
            found.append(to_label(unit))
    return found


def to_label(unit) -> dict:
    """Return the step that labels a unit in the hand: as it is pulled from where it was, "" for nowhere."""
    return _step("pull", unit.id, _came_from(unit), False)


def _came_from(unit) -> str:
    if unit.pulled_from:
        return unit.pulled_from
    # One that was not where it was on record was never pulled there.
    places = [move["position"] for move in unit.transfers if move["position"]]
    return places[-1] if places else ""


def _emptied(job: Job, order: list) -> list[str]:
    """Return the positions of a move, then those whose unit it takes without putting another there."""
    planned = [job.move["fitted"][position] for position in order]
    before = job.move["before"]
    return order + [p["id"] for p in job.positions if p["id"] not in order and before.get(p["id"]) in planned]


def _in_the_way(job: Job) -> list[tuple]:
    """Return (position, unit) of what came to sit where the move cannot use it, since it began.

    Another phone put it there, or its label was read there: until it is out, nothing can be fitted.
    """
    fitted, before, found = job.move["fitted"], job.move["before"], []
    planned = [fitted[position] for position in fitted]
    for each in job.positions:
        position = each["id"]
        sits = job.holds.get(position)
        if not sits or sits in (before.get(position), fitted.get(position)):
            continue
        if position in fitted or sits in planned:
            found.append((position, sits))
    return found


def _last(job: Job, moved: list) -> list[dict]:
    """Return the step once all units are in place: locked for a test, pushed home for a replacement."""
    if not moved:
        return []
    fitted = job.move["fitted"]
    in_place = not [p for p in moved if job.holds.get(p) != fitted[p]]
    if job.move["move"] == "replace":
        open_places = [p for p in moved if job.fit_checked_at(p) != fitted[p]]
        hanging = job.hanging()
        places = [each["id"] for each in job.positions if each["id"] in open_places or each["id"] in hanging]
        if not places:
            return [_step("seat", fitted[moved[0]], moved[0], in_place)]
        return [_several("seat", job, places, False)]
    open_places = [p for p in moved if not job.is_locked(p)]
    return [_several("lock", job, open_places or moved, in_place and not open_places)]


def _several(do, job: Job, positions: list, done) -> dict:
    made = _step(do, job.move["fitted"].get(positions[0]) or job.holds.get(positions[0]), positions[0], done)
    made["positions"] = positions
    return made


def current(job: Job) -> tuple | None:
    """Return (step, number from 1, total) of the next step of the move, or None when all are done."""
    listed = steps(job)
    for index in range(len(listed)):
        if not listed[index]["done"]:
            return listed[index], index + 1, len(listed)
    return None


def _step(do, unit, position, done) -> dict:
    return {"do": do, "unit": unit, "positions": [position], "position": position, "done": bool(done)}
