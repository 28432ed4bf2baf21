"""Tests with nothing done between them: those that say the same again, and a fault that went by itself."""

from ..state.job import Job


def says_the_same(job: Job) -> bool:
    """Tell whether the last two tests showed the same fault with nothing done between them.

    Not of a fault that comes and goes: that takes several tests.
    """
    if len(job.tests) < 2 or job.comes_and_goes:
        return False
    before, last = job.tests[-2], job.tests[-1]
    if not (last["heard"] and before["heard"] and last["faulted"]):
        return False
    if last["cleaned"] or last["repaired"]:
        return False
    names = ("fitted", "faulted", "unplugged", "silent")
    return not [name for name in names if before[name] != last[name]]


def went_by_itself(job: Job) -> bool:
    """Tell whether the last test found clean what the one before showed, with nothing done between them."""
    if len(job.tests) < 2 or job.comes_and_goes:
        return False
    before, last = job.tests[-2], job.tests[-1]
    if not (last["heard"] and before["heard"] and before["faulted"]) or last["faulted"]:
        return False
    same = not [name for name in ("fitted", "unplugged", "silent") if before[name] != last[name]]
    return same and not (last["cleaned"] or last["repaired"])


def last(job: Job, entries: list) -> list:
    """Return candidates of the reasoning, the bare test at the end where it would say the same."""
    if not says_the_same(job):
        return entries
    again = [entry for entry in entries if entry["move"] == "retest"]
    return [entry for entry in entries if entry["move"] != "retest"] + again
