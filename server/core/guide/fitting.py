"""The guided exchange: label after label, all locks in one go, and what hangs pushed home at the end."""

from ..evidence import unit_history
from ..facts.draft import draft
from ..messages import all_of
from ..messages import message
from ..messages import sentences
from ..state import exchange
from ..state import own_label
from ..state.job import Job
from ..words import words
from .step import action
from .step import step
from .step import stop_move


def guided(job: Job, under_way: tuple) -> dict:
    """Return the screen of the current step of an exchange."""
    now, number, total = under_way
    made = _GUIDES[now["do"]](job, now)
    made["progress"] = {"now": number, "total": total, "word": _guide_word(job)}
    made["heading"] = _whole(job) if made["form"] == "scan" else None
    made["expects"]["do"] = now["do"]
    made["expects"]["unit"] = now["unit"]
    made["expects"]["position"] = now["position"]
    if job.move:
        made["also"] = [stop_move()]
    return made


def _whole(job: Job) -> dict | None:
    """Return what all labels of a move are read for, in a few words; None without a move."""
    if not job.move:
        return None
    places = [each["id"] for each in job.positions if each["id"] in job.move["fitted"]]
    return message("guide-whole", move=_guided(job), positions=_names(job, places))


def impossible(job: Job) -> dict | None:
    """Return the step that ends a move whose unit is out of reach by now: scrapped, handed over, in doubt."""
    for position in sorted(job.move["fitted"]):
        unit = job.unit(job.move["fitted"][position])
        waiting = unit.is_in_stock() and unit.id in job.move["from_stock"]
        if unit.is_disputed() or not (unit.is_fitted_here() or unit.is_in_hand_here() or waiting):
            return step(
                "move.impossible",
                message("guide-impossible-title"),
                message("guide-impossible-text", unit=words.unit_name(unit), place=words.place_words(unit)),
                action=stop_move(),
            )
    return None


def plug_back(job: Job) -> dict | None:
    """Return the step that puts a plug back on that was off for a test, or None."""
    if not job.plugged_off or (job.move and job.move["move"] == "unplug"):
        return None
    where = words.position_name(job, job.plugged_off[0])
    return step(
        "plug_back",
        message("guide-plug-back-title", position=where),
        sentences([message("guide-plug-back-key-off"), job.sort.handling.plug]),
        action=action(
            message("guide-lock-done", count=1), draft("connector_locked", position=job.plugged_off[0])
        ),
    )


def _guide_word(job) -> dict:
    """Return what the guided steps are steps of."""
    return message(_PROGRESS.get(_guided(job), "guide-progress-home"))


def _guided(job: Job) -> str:
    """Return which move it is, "fit" for an exchange with a sensor that sits nowhere; "" for none."""
    move = job.move["move"] if job.move else ""
    if move == "exchange" and not exchange.goes_round(job.move["fitted"], job.move["before"]):
        return "fit"
    return move


_PROGRESS = {
    "exchange": "guide-progress-exchange",
    "fit": "guide-progress-fit",
    "replace": "guide-progress-replacement",
}


def left_over(job: Job) -> list:
    """Return the units in hand whose own position is empty while no move is under way.

    One that was found bad is not among them: what comes there instead of it is asked.
    """
    holds = job.holds
    left = []
    for unit in job.in_hand():
        position = job.unit(unit).pulled_from
        if not position or job.unit(unit).is_disputed() or holds.get(position):
            continue
        if not unit_history.condemned(job.state, unit):
            left.append(unit)
    return left


def put_back(job: Job, units: list) -> dict:
    """Return the step that brings a pulled unit back after a move was given up."""
    unit = units[0]
    return guided(
        job,
        ({"do": "fit", "unit": unit, "position": job.unit(unit).pulled_from}, 1, len(units)),
    )


def label(job: Job) -> dict | None:
    """Return the step that labels what has no label in the hand and no place to go back to, or None."""
    bare = [unit for unit in map(job.unit, job.in_hand()) if not unit.is_labelled()]
    return guided(job, (exchange.to_label(bare[0]), 1, len(bare))) if bare else None


def _take(job: Job, now) -> dict:
    name = words.unit_name(job.unit(now["unit"]))
    return step(
        "take",
        message("guide-take-title", unit=name),
        message("guide-take-text", by=_read_by(job.unit(now["unit"]))),
        form="scan",
        action=action(message("guide-scan-its-label")),
    )


def _pull(job: Job, now) -> dict:
    where = words.position_name(job, now["position"])
    unit = job.unit(now["unit"])
    handling = job.sort.handling
    out = job.fitted_at(now["position"]) != now["unit"]
    if unit.is_labelled():
        title = message("guide-pull-title", unit=words.unit_name(unit), position=where)
        text = [handling.take_out, message("guide-pull-scan", by=_read_by(unit))]
    elif not now["position"]:
        title = message("guide-pull-title-hand", sort=job.sort.identity)
        text = [message("guide-pull-label")]
    elif out:
        title = message("guide-pull-title-out", position=where, sort=job.sort.identity)
        text = [message("guide-pull-label")]
    else:
        title = message("guide-pull-title-bare", position=where, sort=job.sort.identity)
        text = [handling.take_out, message("guide-pull-label")]
    return step(
        "pull",
        title,
        sentences(text),
        form="scan",
        action=action(message("guide-scan-its-label")),
        expects={"may_write": not unit.is_labelled(), "asks_part": not unit.part},
    )


def _fit(job: Job, now) -> dict:
    name = words.unit_name(job.unit(now["unit"]))
    where = words.position_name(job, now["position"])
    unit = job.unit(now["unit"])
    back = None
    if not unit.is_labelled() and unit.pulled_from == now["position"]:
        back = draft(
            "unit_fitted", unit=unit.id, position=now["position"], how="tapped", override="", hanging=True
        )
    return step(
        "fit",
        message("guide-fit-title", unit=name, position=where),
        sentences(
            [message("guide-fit-scan", by=_read_by(unit), sort=job.sort.identity), job.sort.handling.plug]
        ),
        form="scan",
        action=action(message("guide-fit-scan-action", sort=job.sort.identity)),
        second=action(message("guide-fit-is-back"), back) if back else None,
    )


def _read_by(unit) -> str:
    """Return how the label is told to the phone: no camera reads one that was written by hand."""
    return "tap" if own_label.is_written(unit) else "scan"


def _lock(job: Job, now) -> dict:
    places = now["positions"]
    if not job.sort.hangs:
        return seat(job, places)
    drafts = [draft("connector_locked", position=place) for place in places]
    return step(
        "lock",
        message("guide-lock-title", positions=_names(job, places), count=len(places)),
        message("guide-lock-pull", count=len(places)),
        action=action(message("guide-lock-done", count=len(places)), *drafts),
        expects={"positions": places},
    )


def _seat(job: Job, now) -> dict:
    return seat(job, now["positions"])


def seat(job: Job, places: list) -> dict:
    """Return the step that pushes everything home that hangs: one list, one confirmation."""
    ids = [check["id"] for check in job.sort.fit_checks]
    holds = job.holds
    drafts = []
    for place in places:
        drafts.append(draft("connector_locked", position=place))
        drafts.append(draft("fit_checked", unit=holds[place], position=place, checks=ids))
    return step(
        "seat",
        message("guide-seat-title", positions=_names(job, places)),
        sentences([job.sort.handling.put_in, message("guide-seat-text")]),
        form="checklist",
        choices=[dict(check) for check in job.sort.fit_checks],
        action=action(message("guide-seat-done", count=len(places)), *drafts),
        expects={"do": "seat", "unit": holds[places[0]], "position": places[0], "positions": places},
    )


def _names(job: Job, places: list) -> dict:
    return all_of([words.position_name(job, place) for place in places])


_GUIDES = {"take": _take, "pull": _pull, "fit": _fit, "lock": _lock, "seat": _seat}
