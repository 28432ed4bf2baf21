"""Jobs of which some are not in memory: a phone keeps those that are closed in its storage, each for itself.

Of a job that is not in memory its line is: what the lists say of it. Whoever wants more gets NotLoaded,
the host passes that on, the phone hands the job over and asks again. So an answer is either the one that
all jobs in memory give, or none yet.
"""

from collections import namedtuple

from ..codes import troublecode
from ..errors import NotLoaded

_LINE = ("id", "vehicle", "complaint", "layout", "part", "positions", "reach", "opened_at")


def line_of(job: dict) -> dict:
    """Return what the lists say of a job: a few of its fields, `closed` as a truth, `tests` as a number."""
    line = {name: job[name] for name in _LINE}
    line["closed"] = job["closed"] is not None
    line["closed_at"] = job["closed"]["at"] if job["closed"] else 0
    line["tests"] = len(job["tests"])
    return line


def kept_line(job: dict) -> dict:
    """Return the line of a job that goes out of memory: with what it is found by besides."""
    line = line_of(job)
    line["people"] = people_of(job)
    line["codes"] = codes_of(job)
    line["means"] = means_of(job)
    return line


def people_of(job: dict) -> list[str]:
    """Return who has an entry on a job, in order of name."""
    people = {entry["actor"]: True for entry in job["history"]}
    return sorted([name for name in people if name])


def codes_of(job: dict) -> list[str]:
    """Return the trouble codes that the tests of a job showed, as they are told, in order."""
    codes = {}
    for test in job["tests"]:
        for shown in test["codes"]:
            codes[troublecode.in_one(shown)] = True
    return sorted(codes)


def means_of(job: dict) -> dict:
    """Return what was said on a job of the codes of its tests: code -> {"means", "at"}, the latest."""
    means = {}
    for test in job["tests"]:
        for said in test.get("means", []):
            means[said["code"]] = {"means": said["means"], "at": test["at"]}
    return means


# Ids of jobs, the newest first; `vehicles` has those of the vehicles of all, by the opening of each job.
Order = namedtuple("Order", ("open", "waiting", "closed", "vehicles"))


def in_order(jobs) -> Order:
    """Return the jobs by how they stand.

    By comprehensions over plain dicts: this is asked of thousands of jobs at once.
    """
    here, lines = (jobs.jobs, jobs.lines) if isinstance(jobs, JobsInPart) else (jobs, {})
    open_ones = [job for job in here.values() if not job["closed"]]
    closed = [(-job["closed"]["at"], job["id"]) for job in here.values() if job["closed"]]
    closed.extend([(-line["closed_at"], line["id"]) for line in lines.values()])
    opened = [(-job["opened_at"], job["id"], job["vehicle"]) for job in here.values()]
    opened.extend([(-line["opened_at"], line["id"], line["vehicle"]) for line in lines.values()])
    return Order(
        [job["id"] for job in _newest(open_ones) if "paused" not in job],
        [job["id"] for job in _newest(open_ones) if "paused" in job],
        [identity for _, identity in sorted(closed)],
        [vehicle for _, _, vehicle in sorted(opened)],
    )


def _newest(jobs: list[dict]) -> list[dict]:
    return sorted(jobs, key=lambda job: (-job["opened_at"], job["id"]))


class JobsInPart:
    """Job id -> job, like the dict it stands for; of some only the line is here."""

    def __init__(self, jobs: dict, lines: dict):
        """Begin with `jobs` in memory and the `lines` of those that are not."""
        self.jobs = jobs
        self.lines = lines

    def __getitem__(self, identity: str | None) -> dict:
        """Return a job; raises NotLoaded where only its line is here."""
        if identity in self.lines:
            raise NotLoaded([identity])
        return self.jobs[identity]

    def __setitem__(self, identity: str | None, job: dict) -> None:
        self.jobs[identity] = job
        self.lines.pop(identity, None)

    def __delitem__(self, identity: str) -> None:
        self.jobs.pop(identity, None)
        self.lines.pop(identity, None)

    def __contains__(self, identity) -> bool:
        return identity in self.jobs or identity in self.lines

    def __iter__(self):
        return iter(list(self.jobs) + list(self.lines))

    def __len__(self) -> int:
        return len(self.jobs) + len(self.lines)

    def get(self, identity, default=None):
        """Return a job or `default`; raises NotLoaded where only its line is here."""
        return self[identity] if identity in self else default

    def copy(self) -> "JobsInPart":
        """Return the same jobs under a mapping of its own."""
        return JobsInPart(dict(self.jobs), dict(self.lines))

    def all(self) -> dict:
        """Return every job; raises NotLoaded while one is not here."""
        if self.lines:
            raise NotLoaded(sorted(self.lines))
        return self.jobs

    def unload(self, identity: str) -> None:
        """Keep only the line of a job."""
        self.lines[identity] = kept_line(self.jobs.pop(identity))
