"""The step of a self-test: the likely answers, one tap each, and the form for everything else."""

from ..facts.draft import draft
from ..facts.evidence import AT_ONCE
from ..facts.evidence import PROVOKED
from ..facts.evidence import provoked_words
from ..messages import all_of
from ..messages import message
from ..state.job import Job
from ..words import words
from .step import action
from .step import step
from .step import stop_move


def to_pick(job: Job) -> list[dict]:
    """Return the positions as a form lists them: id and name."""
    return [{"id": position["id"], "name": words.called(job, position)} for position in job.positions]


def again(job: Job) -> dict:
    """Return the button that tests once more, to be sure."""
    return action(
        job.sort.says("guide-test-again"),
        draft("move_started", move="retest", fitted={}, position="", reason="to-be-sure"),
    )


def test_step(job: Job, title: dict) -> dict:
    """Return the step for a self-test; `expects` says what the form starts from.

    `choices` are the answers that the situation suggests, each with the whole fact: that the fault went
    along, stayed, is gone, or that no sounder was heard. A position that is empty may show a fault all
    the same: its plug is off.
    """
    move = job.move
    holds = job.holds
    unplugged = [move["position"]] if move and move["move"] == "unplug" else []
    asks = job.sort.self_test
    text = asks.start
    if unplugged:
        text = job.sort.says("guide-test-unplugged", position=words.position_name(job, unplugged[0]))
    empty = [position["id"] for position in job.positions if not holds.get(position["id"])]
    choices = [] if unplugged or empty else _answers(job)
    provoking = _provoking(job)
    if choices:
        text = asks.start_again
    elif provoking and provoking["chosen"] == AT_ONCE:
        text = asks.provoke  # else it would be one more test straight after another, which proves little
    return step(
        "test",
        title,
        text,
        form="test",
        expects={
            "positions": to_pick(job),
            "unplugged": unplugged,
            "empty": empty,
            "number": len(job.tests) + 1,
            "provoking": provoking,
            "codes": job.sort.codes,
            "asks": {
                "question": asks.question,
                "asked": asks.asked,
                "yes": asks.yes,
                "no": asks.no,
                "heard": asks.heard,
                "not_heard": asks.not_heard,
            },
        },
        choices=choices,
        action=action(message("guide-test-enter")),
        also=[stop_move()] if move and move["move"] in ("unplug", "retest") else [],
    )


def _provoking(job: Job) -> dict | None:
    """Return what may have brought the fault out since the test before; None where it does not come and go.

    `chosen` stands until somebody chooses: where nothing was moved, cleaned or repaired since a clean test,
    that nothing was done.
    """
    if not job.comes_and_goes or not job.tests:
        return None
    last = job.last_test()
    same = not (job.cleaned_since_test or job.repaired_since_test)
    for position in job.positions:
        same = same and job.holds.get(position["id"]) == last["fitted"].get(position["id"])
    at_once = same and last["heard"] and not last["faulted"]
    return {
        "of": [{"id": what, "words": provoked_words(what)} for what in PROVOKED if same or what != AT_ONCE],
        "chosen": AT_ONCE if at_once else "",
    }


def _answers(job: Job) -> list[dict]:
    """Return the likely answers as {"id", "words", "mark", "events"}; none before a test showed a fault.

    Each says that the sounder was heard, except the last, which says that it was not.
    """
    before = _last_heard(job)
    if before is None or not (before["faulted"] or _was_repaired(job)):
        return []
    holds = job.holds
    sits = {holds[place]: place for place in sorted(holds) if holds[place]}
    went = []
    for place in before["faulted"]:
        unit = before["fitted"].get(place)
        if unit in sits:
            went.append(sits[unit])
    moved = [place for place in went if before["fitted"].get(place) != holds[place]]
    went = _in_order(job, went)
    stayed = _in_order(job, [place for place in before["faulted"] if holds.get(place)])
    answers = []
    if went and went != stayed:
        # A suspect may lie in the hand; what faulted where it still sits went nowhere.
        answers.append(_answer(job, "went" if moved else "still", went))
    if stayed:
        answers.append(_answer(job, "stayed" if went != stayed else "still", stayed))
    gone = _answer(job, "gone", [])
    answers = answers + [gone] if before["faulted"] and not _was_repaired(job) else [gone] + answers
    answers.append(
        {
            "id": "not_heard",
            "words": message("guide-test-not-heard", proof=job.sort.self_test.not_heard),
            "mark": "aside",
            "events": [_test_run(job, [], False)],
        }
    )
    return answers


def _last_heard(job: Job) -> dict | None:
    for test in reversed(job.tests):
        if test["heard"] and not test["unplugged"]:
            return test
    return None


def _was_repaired(job: Job) -> bool:
    """Tell whether something was done since the last test that should have ended the fault."""
    replacing = job.move and job.move["move"] in ("replace", "home")
    return bool(job.repaired_since_test or job.cleaned_since_test or replacing)


def _in_order(job: Job, places: list) -> list[str]:
    return [position["id"] for position in job.positions if position["id"] in places]


# by the id of an answer
_ANSWERS = {
    "went": "guide-test-went",
    "stayed": "guide-test-stayed",
    "still": "guide-test-still",
    "gone": "guide-test-gone",
}


def _answer(job: Job, identity: str, faulted: list) -> dict:
    if faulted:
        names = all_of([words.position_name(job, place) for place in faulted])
        said = message(_ANSWERS[identity], positions=names)
    else:
        said = message(_ANSWERS[identity])
    mark = "fault" if faulted else "clean"
    return {"id": identity, "words": said, "mark": mark, "events": [_test_run(job, faulted, True)]}


def _test_run(job: Job, faulted: list, heard: bool) -> dict:
    return draft(
        "test_run",
        heard=heard,
        faulted=faulted,
        silent=[],
        unplugged=[],
        codes=[],
        came_and_went=False,
        note="",
        knows=job.known_entries,
    )
