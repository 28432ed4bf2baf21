"""The steps of moves: choosing one, and what a move asks before its test: cleaning, wiring checks."""

from ..evidence import checks as rounds
from ..facts.draft import draft
from ..messages import decimal
from ..messages import message
from ..messages import sentences
from ..meter import copper
from ..meter import figure
from ..meter import limits
from ..state.job import Job
from ..words import words
from . import cleaning
from . import testing
from .step import action
from .step import step
from .step import stop_move

_COOL_AND_HOT = (20, 85)  # °C: a workshop, and beside an exhaust


def thinking() -> dict:
    """Return the step that stands where a move will, while none is worked out."""
    return step("thinking", message("guide-thinking"), "")


def choose(job: Job, moves: list) -> dict:
    """Return the step that proposes the best move; the others are behind its second button."""
    if not moves:
        return testing.test_step(job, job.sort.says("guide-test-again"))
    best = moves[0]
    return step(
        "move",
        best["title"],
        best["reason"],
        form="moves",
        action=action(best["start_words"], *best["events"]),
        second=action(message("guide-moves-other")) if len(moves) > 1 else None,
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
    made = ask(job, position, check)
    made["second"] = repair
    made["progress"] = {
        "now": len(checks) - len(open_checks) + 1,
        "total": len(checks),
        "word": message("guide-progress-check"),
    }
    return made


def ask(job: Job, position: str, check: dict) -> dict:
    """Return the step of one check at one position: what to do, and a tap for each reading."""
    compares = isinstance(check.get("limit"), limits.Beside)
    figures = {"compared": ""} if compares else {}
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
                          reads=reads, **figures)
                ],
            }
        )  # fmt: skip
    return step(
        "measure",
        message("guide-measure-title", position=words.position_name(job, position), check=check["title"]),
        _text(check),
        form="measure",
        choices=choices,
        expects={
            "position": position,
            "check": check["id"],
            "units": figure.offered(check["unit"]),
            "compares": compares,
        },
    )


def _text(check: dict) -> dict:
    """Return what a check says to do, and what the copper of its wire has, where there is one to know."""
    wire = check.get("wire")
    if not wire:
        return check["text"]
    cool, hot = [copper.resistance(wire.size, 1000 * wire.metres, celsius) for celsius in _COOL_AND_HOT]
    return sentences(
        [
            check["text"],
            message(
                "guide-measure-copper",
                metres=wire.metres,
                size=wire.size,
                cool=_hundredths(cool),
                hot=_hundredths(hot),
            ),
        ]
    )


def _hundredths(micro: int) -> dict:
    return decimal((micro + 5000) // 10000, 2)
