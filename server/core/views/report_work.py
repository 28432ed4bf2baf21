"""What was done on a job, test by test, as a customer reads it."""

from .. import phrases
from ..state.job import Job
from ..words import causes
from ..words import words
from ..words.words import unit_name


def done(job: Job) -> list[dict]:
    """Return [{"at", "sentence", "mark"}]: each test with what was done before it, then what came after.

    `mark` is "fault", "clean" or "aside".
    """
    listed, before = [], None
    for index in range(len(job.tests)):
        test = job.tests[index]
        said = _changes(job, before, test["fitted"], test["cleaned"], test["repaired"], test["unplugged"])
        said.append(_read(job, index))
        listed.append({"at": test["at"], "sentence": " ".join(said), "mark": _mark(test)})
        before = test["fitted"]
    holds = job.holds
    now = {p["id"]: holds[p["id"]] for p in job.positions if holds.get(p["id"])}
    last = []
    if before:
        last = _changes(job, before, now, job.cleaned_since_test, job.repaired_since_test, [])
    if last and not job.is_closed():
        listed.append({"at": None, "sentence": " ".join(last) + " Not tested since.", "mark": "aside"})
    return listed


def _mark(test) -> str:
    if not test["heard"]:
        return "aside"
    return "fault" if test["faulted"] else "clean"


def _read(job, index) -> str:
    test = job.tests[index]
    name = "Self-test {}".format(index + 1)
    if not test["heard"]:
        return "{}: {}, so it does not count.".format(name, job.sort.self_test.was_not_heard)
    if test["faulted"]:
        return "{}: fault at {}.".format(name, _places(job, test["faulted"]))
    return name + ": no fault."


def _changes(job: Job, before, now, cleaned, repaired, unplugged) -> list[str]:
    """Return what differs between two tests as sentences."""
    said = []
    for position in cleaned:
        said.append("Cleaned {}.".format(words.position_name(job, position)))
    for cause in repaired:
        said.append("Repaired {}.".format(causes.phrase(job, cause)))
    if unplugged:
        said.append("Unplugged {} for the test.".format(_places(job, unplugged)))
    if before is None:
        return said
    moved, fresh, gone = [], [], []
    seen = [before[position] for position in before]
    for place in job.positions:
        position = place["id"]
        if now.get(position) == before.get(position):
            continue
        if position not in now:
            gone.append(position)
        elif now[position] in seen:
            moved.append(position)
        else:
            fresh.append(position)
    if len(moved) > 1:
        said.append("Exchanged the {} at {}.".format(job.sort.units, _places(job, moved)))
    elif moved:
        said.append("Moved {} to {}.".format(job.sort.a_unit, _places(job, moved)))
    for position in fresh:
        said.append(
            "Fitted {} {} at {}.".format(
                job.sort.unit, unit_name(job.unit(now[position])), words.position_name(job, position)
            )
        )
    if gone:
        said.append("Took out the {} at {}.".format(job.sort.unit, _places(job, gone)))
    return said


def _places(job, positions) -> str:
    return phrases.listed([words.position_name(job, position) for position in positions])
