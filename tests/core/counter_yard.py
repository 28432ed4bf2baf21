"""Jobs that end with a bad unit on its way to the parts counter, for the tests of the counter."""

from functools import cache

from tests.core.driver import START
from tests.core.driver import Driver
from tests.core.driver import home
from tests.hosts import Core

OUTER, INNER = "rear-right-outer", "rear-right-inner"
DAY_MS = 86_400_000
NOW = START + 2 * DAY_MS
BAD = home(OUTER)
CLERK = "dccccccccccccccc0"


def proven(core, **how):
    """Put a job on record up to its close: the sensor of right outer found bad, replaced, proven.

    Returns the driver; the bad unit is `home(OUTER)`, its label `driver.labels[home(OUTER)]`. The job is
    gone through once for each `how` and its facts folded from then on: the phone reasons slowly.
    """
    done = _gone_through(tuple(sorted(how.items())))
    job = Driver(core)
    core("add", events=[{"event": event} for event in done.events])
    job.events, job.seq, job.prev, job.labels = [*done.events], done.seq, done.prev, dict(done.labels)
    return job


@cache
def _gone_through(how):
    return _go_through(**dict(how))


def _go_through(*, part="PS-1", serial="", scanned=True, photos=True, close=True, alone=False):
    job = Driver(Core()).begin(part=part)
    if serial:
        job.force("part_noted", unit=BAD, part=part, serial=serial)
    job.test(OUTER)
    if photos:
        job.photograph()
    job.exchange(rear_right_outer=home(INNER), rear_right_inner=home(OUTER))
    job.test(INNER)
    job.new_unit(INNER)
    job.guided()
    for _ in range(9):
        if job.step()["form"] != "test":
            break
        job.test()
    while job.step()["form"] != "close":
        job.tap()
    _hand_over(job, scanned=scanned, alone=alone, close=close)
    return job


def _hand_over(job, *, scanned, alone, close):
    """Give the one in hand its place at the counter, which closes the job, unless it stays open."""
    drafts = []
    for draft in job.step()["choices"][0]["events"]:
        data = draft["data"]
        if draft["kind"] == "unit_moved":
            data = {**data, "how": "scanned" if scanned else "tapped", "alone": alone}
        if close or draft["kind"] != "job_closed":
            drafts.append({"kind": draft["kind"], "data": data})
    job.record(*drafts)


class Clerk(Driver):
    """The phone at the counter: asks what to do with a unit and records what was decided."""

    def __init__(self, core, device=CLERK, name="Jo"):
        """A device of its own, away from any job."""
        super().__init__(core, device=device, job=None, actor=name)

    def ask(self, text="", how="scanned", **more):
        """Return what the counter proposes; the record is checked and intact unless said otherwise."""
        asked = {"now": NOW, "window_days": 30, "record": [], **more}
        return self.core("counter", text=text, how="" if more.get("unit") else how, **asked)

    def decide(self, answer, decision=None, overrule=""):
        """Record a decision (the proposal by default) as the app does."""
        decision = decision or answer["proposed"]
        chosen = next(each for each in answer["decisions"] if each["decision"] == decision)
        filled = [
            {"kind": each["kind"], "data": {**each["data"], "signed": self.actor, "overrule": overrule}}
            for each in chosen["events"]
        ]
        self.record(answer["received"], *filled)


def standing(answer, rule):
    """Return how one rule stands in an answer, or None where it says nothing."""
    return next((each["state"] for each in answer["checks"] if each["rule"] == rule), None)


def said(answer, rule):
    """Return title and sentence of one rule."""
    check = next(each for each in answer["checks"] if each["rule"] == rule)
    return f"{check['title']}: {check['sentence']}"
