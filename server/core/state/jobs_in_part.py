"""Jobs of which some are not in memory: a phone keeps those that are closed in its storage, each for itself.

Of a job that is not in memory its line is: what the lists say of it. Whoever wants more gets NotLoaded,
the host passes that on, the phone hands the job over and asks again. So an answer is either the one that
all jobs in memory give, or none yet.
"""

from ..errors import NotLoaded

_LINE = ("id", "vehicle", "complaint", "layout", "part", "positions", "reach", "opened_at")


def line_of(job: dict) -> dict:
    """Return what the lists say of a job: a few of its fields, `closed` as a truth, `tests` as a number."""
    line = {name: job[name] for name in _LINE}
    line["closed"] = job["closed"] is not None
    line["tests"] = len(job["tests"])
    return line


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
        self.lines[identity] = line_of(self.jobs.pop(identity))
