"""What the fields of an entry can be entered anew as, where that is chosen and not typed."""

from ..facts.job import UNREPAIRED
from ..facts.pausing import WHY
from ..facts.sounder import FOUND
from ..guide import repairing
from ..messages import message
from ..state.job import Job
from ..words import causes
from ..words import words

PLACES = ("stock", "out", "counter", "customer", "scrapped")
MANY = ("faulted", "silent", "ticks", "missed", "units")


def options(job: Job | None, name: str, data: dict) -> list[dict]:
    """Return the values that a field can have as {"value", "words"}, none where it is typed."""
    if job and (name in MANY or name == "position"):
        return [option(each["id"], words.called(job, each)) for each in job.positions]
    if job and name == "unit":
        return [option(each, words.unit_name(job.unit(each))) for each in job.state.units_of(job.id)]
    if name == "place":
        return [option(each, words.place_name(each)) for each in PLACES]
    if name == "reads":
        return [
            option(each, message("views-correct-reads", reads=each)) for each in ("good", "bad", "unclear")
        ]
    if job and name == "result":
        return [
            option(result, said)
            for lamp in job.sort.lamps
            if lamp.when == data["when"]
            for result, said in lamp.choices
        ]
    if job and name == "cause":
        return [option(cause, causes.phrase(job, cause)) for cause in repairing.can_be(job)]
    if job and name == "segment":
        return [option(each["id"], each["words"]) for each in repairing.segments(job, "circuit")]
    if name == "why":
        return _reasons(data)
    if job and name in ("check", "found"):
        return _sounder(job, name)
    if name == "heard":
        return [
            option(True, message("views-correct-heard", heard="yes")),
            option(False, message("views-correct-heard", heard="no")),
        ]
    return []


def in_hand(job: Job, data: dict) -> list[dict]:
    """Return the units that can have got mixed up on a job as it stood: those in hand, and those named."""
    out = job.state.units_out(job.id)
    named = [each for each in data["units"] if job.state.now(each) not in out]
    return [option(each, words.unit_name(job.unit(each))) for each in sorted(out) + named]


def _reasons(data: dict) -> list[dict]:
    """Return why a job can rest, which says what part it waits for, or why it can end unrepaired."""
    if "part" in data:
        return [option(each, message("ways-pause-why", why=each)) for each in WHY]
    return [option(each, message("ways-close-why", why=each)) for each in UNREPAIRED]


def _sounder(job: Job, name: str) -> list[dict]:
    """Return what can have been checked because no sounder was heard, or what can have been found."""
    if name == "found":
        return [option(each, message("views-correct-sounder", found=each)) for each in FOUND]
    checks = job.sort.sounder.checks if job.sort.sounder else ()
    return [option(each["id"], each["title"]) for each in checks]


def option(value, words) -> dict:
    """Return one of the values that a field can have."""
    return {"value": value, "words": words}
