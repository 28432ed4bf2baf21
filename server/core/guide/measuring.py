"""The steps of one check of a circuit and of the end of its checks, and how they begin."""

from ..evidence import checks
from ..facts.draft import draft
from ..messages import message
from ..messages import sentences
from ..meter import figure
from ..meter import limits
from ..parts import wires
from ..state.job import Job
from ..words import words
from .step import action
from .step import step

# What brings out a fault that shows only warm, of all that can come before a test.
WARMED = ("heat", "drive")


def one_of_several(job: Job, position: str, identity: str, done: int, left: int, repair: dict | None) -> dict:
    """Return the step of a check; `done` were made, `left` are left, `repair` is the button for a find."""
    made = ask(job, position, job.sort.circuit_check(identity) or {}, checks.warmed(job, position))
    made["second"] = repair
    made["progress"] = {"now": done + 1, "total": done + left, "word": message("guide-progress-check")}
    return made


def begin(job: Job, position: str, **how) -> dict:
    """Return the fact that begins to check the circuit of a position, after the rounds that there were.

    `how` is `provoked`, where a fault that comes and goes is brought out for it.
    """
    how.update(checks.again(job, position))
    return draft("move_started", move="meter", fitted={}, position=position, reason="", **how)


def warm(job: Job, position: str) -> list[dict]:
    """Return the buttons that begin to check the circuit of a position while it is warm."""
    return [
        action(message("guide-measure-begin-warm", what=what), begin(job, position, provoked=what))
        for what in WARMED
    ]


def go_on(job: Job) -> dict | None:
    """Return the button that ends the checks which a move began, None where none did."""
    if not job.move:
        return None
    return action(message("guide-measure-go-on"), draft("move_dropped", reason="checks-done"))


def ask(job: Job, position: str, check: dict, provoked: str = "") -> dict:
    """Return the step of one check at one position: what to do, and a tap for each reading.

    `provoked` is what comes before it, to bring out a fault that comes and goes; "" for nothing.
    """
    noted = job.wire_at(position)
    made = wires.on(check, noted)
    compares = isinstance(made.get("limit"), limits.Beside)
    more = {"compared": ""} if compares else {}
    if job.sort.harness:
        more["since"] = job.sort.harness.since
    if provoked:
        more["provoked"] = provoked
    choices = []
    for reads, said in (
        ("good", made["good"]),
        ("bad", made["bad"]),
        ("unclear", message("guide-measure-unclear")),
    ):
        fact = draft("circuit_measured", position=position, check=made["id"], value="", reads=reads, **more)
        choices.append({"words": said, "reads": reads, "events": [fact]})
    copper = wires.told(made, noted)
    name = words.position_name(job, position)
    told, title = [made["text"]], "guide-measure-title"
    if provoked and "warms" not in check:
        title = "guide-measure-title-warm"
        told.append(message("guide-measure-warm", what=provoked))
    return step(
        "measure.warm" if provoked else "measure",
        message(title, position=name, check=made["title"]),
        sentences(told) if len(told) > 1 else told[0],
        form="measure",
        choices=choices,
        expects={
            "position": position,
            "check": made["id"],
            "units": figure.offered(made["unit"]),
            "compares": compares,
        },
        more=copper,
        harness=None,
    )


def end(job: Job, position: str, done: dict, repair: dict | None) -> dict:
    """Return the step once all checks were made; `done` is check -> what it reads."""
    second = go_on(job)
    return step(
        "measure.done",
        message("guide-measure-done-title", position=words.position_name(job, position)),
        message(
            "guide-measure-done-text",
            bad=len([each for each in sorted(done) if done[each] == "bad"]),
            count=len(done),
            unclear=len([each for each in sorted(done) if done[each] == "unclear"]),
        ),
        action=repair or second,
        second=second if repair else None,
    )
