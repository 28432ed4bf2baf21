"""What was done on a job, test by test, as a customer reads it."""

from ..codes import troublecode
from ..messages import all_of
from ..messages import message
from ..messages import sentences
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
        repaired = _repaired(
            job, test["repaired"], [cause for test in job.tests[:index] for cause in test["repaired"]]
        )
        said = _changes(job, before, test["fitted"], test["cleaned"], repaired, test["unplugged"])
        said.append(_read(job, index))
        listed.append({"at": test["at"], "sentence": sentences(said), "mark": _mark(test)})
        before = test["fitted"]
    holds = job.holds
    now = {p["id"]: holds[p["id"]] for p in job.positions if holds.get(p["id"])}
    last = []
    if before:
        earlier = [cause for test in job.tests for cause in test["repaired"]]
        repaired = _repaired(job, job.repaired_since_test, earlier)
        last = _changes(job, before, now, job.cleaned_since_test, repaired, [])
    if last and not job.is_closed():
        last.append(message("views-work-not-tested"))
        listed.append({"at": None, "sentence": sentences(last), "mark": "aside"})
    return listed


def _repaired(job: Job, now: list, earlier: list) -> list[dict]:
    """Return what was repaired before a test, where and how; `earlier` are the causes repaired before."""
    said = []
    for cause in now:
        of_cause = [each for each in job.repairs if each["cause"] == cause and "again" not in each]
        repair, named = of_cause[earlier.count(cause)], causes.phrase(job, cause)
        if "segment" not in repair:
            said.append(message("views-work-repaired", cause=named))
            continue
        where = job.sort.segment(repair["segment"])
        said.append(message("views-work-repaired-where", cause=named, where=where))
        if repair["what"] not in ("", "repaired"):
            said.append(message("views-work-done", what=repair["what"].rstrip(". ")))
    return said


def _mark(test) -> str:
    if not test["heard"]:
        return "aside"
    return "fault" if test["faulted"] else "clean"


def _read(job, index) -> dict:
    test, number = job.tests[index], str(index + 1)
    if not test["heard"]:
        return job.sort.says("views-work-not-heard", number=number, why=job.sort.self_test.was_not_heard)
    if test["faulted"]:
        said = job.sort.says("views-work-fault", number=number, positions=_places(job, test["faulted"]))
        codes = troublecode.told(test, lambda position: words.position_name(job, position))
        return sentences([said, codes]) if codes else said
    return job.sort.says("views-work-clean", number=number)


def _changes(job: Job, before, now, cleaned, repaired, unplugged) -> list[dict]:
    """Return what differs between two tests as sentences."""
    said = []
    for position in cleaned:
        said.append(message("views-work-cleaned", position=words.position_name(job, position)))
    said.extend(repaired)
    if unplugged:
        said.append(message("views-work-unplugged", positions=_places(job, unplugged)))
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
        said.append(message("views-work-exchanged", sort=job.sort.identity, positions=_places(job, moved)))
    elif moved:
        said.append(message("views-work-moved", sort=job.sort.identity, positions=_places(job, moved)))
    for position in fresh:
        said.append(
            message(
                "views-work-fitted",
                sort=job.sort.identity,
                unit=unit_name(job.unit(now[position])),
                position=words.position_name(job, position),
            )
        )
    if gone:
        said.append(message("views-work-taken-out", sort=job.sort.identity, positions=_places(job, gone)))
    return said


def _places(job, positions) -> dict:
    return all_of([words.position_name(job, position) for position in positions])
