"""The steps of moves: choosing one, the guided exchange, cleaning, and the self-test."""

from ..evidence import checks as rounds
from ..facts.draft import draft
from ..messages import message
from ..messages import sentences
from ..state.job import Job
from ..words import words
from . import cleaning
from .step import action
from .step import step
from .step import stop_move


def choose(job: Job, moves: list) -> dict:
    """Return the step that proposes the best move; the others are behind its second button."""
    if not moves:
        return test_step(job, message("guide-test-again"))
    best = moves[0]
    return step(
        "move",
        best["title"],
        best["reason"],
        form="moves",
        action=action(best["start_words"], *best["events"]),
        second=action(message("guide-moves-other")) if len(moves) > 1 else None,
    )


def to_pick(job: Job) -> list[dict]:
    """Return the positions as a form lists them: id and name."""
    return [{"id": position["id"], "name": words.called(job, position)} for position in job.positions]


def test_step(job: Job, title: dict) -> dict:
    """Return the step for a self-test; `expects` says what the form starts from.

    A position that is empty may show a fault all the same: its plug is off.
    """
    move = job.move
    holds = job.holds
    unplugged = [move["position"]] if move and move["move"] == "unplug" else []
    asks = job.sort.self_test
    text = asks.start
    if unplugged:
        text = message("guide-test-unplugged", position=words.position_name(job, unplugged[0]))
    return step(
        "test",
        title,
        text,
        form="test",
        expects={
            "positions": to_pick(job),
            "unplugged": unplugged,
            "empty": [position["id"] for position in job.positions if not holds.get(position["id"])],
            "number": len(job.tests) + 1,
            "asks": {
                "question": asks.question,
                "yes": asks.yes,
                "no": asks.no,
                "heard": asks.heard,
                "not_heard": asks.not_heard,
            },
        },
        action=action(message("guide-test-enter")),
        also=[stop_move()] if move and move["move"] in ("unplug", "retest") else [],
    )


def before_test(job: Job) -> dict | None:
    """Return what a clean or meter move asks to be done before anything else, or None."""
    move = job.move
    if move["move"] == "clean":
        return cleaning.all_of(job, move["positions"])
    if move["move"] == "meter":
        made = measure(job, move["position"])
        made["also"] = [stop_move()]
        return made
    return None


def measure(job: Job, position: str, repair: dict | None = None) -> dict:
    """Return the guided wiring checks of one position; `repair` is the button once a fault is found."""
    done, _ = rounds.now(job, position)
    checks = job.sort.circuit_checks
    open_checks = [check for check in checks if check["id"] not in done]
    name = words.position_name(job, position)
    if not open_checks:
        second = None
        if job.move:
            second = action(message("guide-measure-go-on"), draft("move_dropped", reason="checks-done"))
        return step(
            "measure.done",
            message("guide-measure-done-title", position=name),
            message(
                "guide-measure-done-text",
                bad=len([c for c in sorted(done) if done[c] == "bad"]),
                count=len(checks),
            ),
            action=repair or second,
            second=second if repair else None,
        )
    check = open_checks[0]
    choices = []
    for reads, said in (
        ("good", check["good"]),
        ("bad", check["bad"]),
        ("unclear", message("guide-measure-unclear")),
    ):
        choices.append(
            {
                "words": said,
                "reads": reads,
                "events": [
                    draft("circuit_measured", position=position, check=check["id"], value="",
                          reads=reads)
                ],
            }
        )  # fmt: skip
    return step(
        "measure",
        message("guide-measure-title", position=name, check=check["title"]),
        check["text"],
        form="measure",
        choices=choices,
        expects={"position": position, "check": check["id"], "unit": check["unit"]},
        second=repair,
        progress={
            "now": len(checks) - len(open_checks) + 1,
            "total": len(checks),
            "word": message("guide-progress-check"),
        },
    )


def guided(job: Job, under_way: tuple) -> dict:
    """Return the screen of the current step of an exchange."""
    now, number, total = under_way
    made = _GUIDES[now["do"]](job, now)
    made["progress"] = {"now": number, "total": total, "word": _guide_word(job)}
    made["expects"]["do"] = now["do"]
    made["expects"]["unit"] = now["unit"]
    made["expects"]["position"] = now["position"]
    if job.move:
        made["also"] = [stop_move()]
    return made


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
        action=action(message("guide-lock-done"), draft("connector_locked", position=job.plugged_off[0])),
    )


def _guide_word(job) -> dict:
    """Return what the guided steps are steps of."""
    move = job.move["move"] if job.move else ""
    return message(_PROGRESS.get(move, "guide-progress-home"))


_PROGRESS = {"exchange": "guide-progress-exchange", "replace": "guide-progress-replacement"}


def left_over(job: Job) -> list:
    """Return the units in hand whose own position is empty while no move is under way."""
    holds = job.holds
    left = []
    for unit in job.in_hand():
        position = job.unit(unit).pulled_from
        if position and not job.unit(unit).is_disputed() and not holds.get(position):
            left.append(unit)
    return left


def put_back(job: Job, units: list) -> dict:
    """Return the step that brings a pulled unit back after a move was given up."""
    unit = units[0]
    return guided(
        job,
        ({"do": "fit", "unit": unit, "position": job.unit(unit).pulled_from}, 1, len(units)),
    )


def _take(job: Job, now) -> dict:
    name = words.unit_name(job.unit(now["unit"]))
    return step(
        "take",
        message("guide-take-title", unit=name),
        message("guide-take-text"),
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
        text = [handling.take_out, message("guide-pull-scan")]
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
        expects={"may_write": not unit.is_labelled()},
    )


def _fit(job: Job, now) -> dict:
    name = words.unit_name(job.unit(now["unit"]))
    where = words.position_name(job, now["position"])
    unit = job.unit(now["unit"])
    back = None
    if not unit.is_labelled():
        back = draft("unit_fitted", unit=unit.id, position=now["position"], how="tapped",
                     override="")  # fmt: skip
    return step(
        "fit",
        message("guide-fit-title", unit=name, position=where),
        sentences([message("guide-fit-scan", sort=job.sort.identity), job.sort.handling.put_in]),
        form="scan",
        action=action(message("guide-fit-scan-action", sort=job.sort.identity)),
        second=action(message("guide-fit-is-back"), back) if back else None,
    )


def _lock(job: Job, now) -> dict:
    where = words.position_name(job, now["position"])
    return step(
        "lock",
        message("guide-lock-title", position=where),
        sentences([job.sort.handling.plug, message("guide-lock-pull")]),
        action=action(message("guide-lock-done"), draft("connector_locked", position=now["position"])),
    )


def _check(job: Job, now) -> dict:
    ids = [check["id"] for check in job.sort.fit_checks]
    return step(
        "check",
        message("guide-check-title", position=words.position_name(job, now["position"])),
        message("guide-check-text"),
        form="checklist",
        choices=[dict(check) for check in job.sort.fit_checks],
        action=action(
            message("guide-check-done"),
            draft("fit_checked", unit=now["unit"], position=now["position"], checks=ids),
        ),
    )


_GUIDES = {"take": _take, "pull": _pull, "fit": _fit, "lock": _lock, "check": _check}
