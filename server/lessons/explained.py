"""What the readings of a job say of `shows` and `false_alarm`, explanation by explanation.

Only jobs whose cause was proven would tell too much good of the self-test: a fault that hid in many tests is
proven in fewer jobs, or another cause is blamed for it. So every job counts, each explanation of it by its
probability (`showing` makes the rates of them). Left out is the first test, for the job was opened for what
it showed; a job whose first test was clean, for somebody waited until a fault showed; tests run at once; and
of a fault that comes and goes what says how often it shows, which is a rate of its own.
"""

from server.core.evidence import readings
from server.core.evidence.shows_rate import acted_on
from server.core.infer import explanations
from server.core.infer.belief import Belief
from server.core.state.job import Job

_MOST = 64  # explanations of a job
_LEAST = 1e-4  # the probability below which an explanation says nothing
_PPB = 1_000_000_000

Counts = list[list[int]]
"""[how many causes acted, readings that showed a fault, clean readings], by the number of causes."""


def explained(job: Job, tests: list[dict], belief: Belief) -> list[list]:
    """Returns [probability in parts per billion, counts] of what can explain a job, [] without readings."""
    used = _used(tests)
    if not used:
        return []
    names = [belief.model.names[cause] for cause in belief.suspects]
    acting = [[acted_on(job, tests, n, [name]) for n in used] for name in names]
    shares: dict[tuple, float] = {}
    for chance, mask in explanations.likeliest(belief, _MOST):
        if chance < _LEAST:
            break
        present = [acting[n] for n in range(len(names)) if mask >> n & 1]
        key = _counts(tests, used, present, job.comes_and_goes)
        shares[key] = shares.get(key, 0.0) + chance
    return [[int(share * _PPB + 0.5), [list(each) for each in key]] for key, share in sorted(shares.items())]


def _used(tests: list[dict]) -> list[int]:
    """Returns the numbers of the tests whose readings are counted."""
    counted = [n for n, test in enumerate(tests) if readings.counts(test)]
    if not counted or not tests[counted[0]]["faulted"]:
        return []
    return [n for n in counted[1:] if not readings.is_at_once(tests[n])]


def _counts(tests: list[dict], used: list[int], present: list[list[dict]], comes_and_goes: bool) -> tuple:
    found: dict[int, list[int]] = {}
    for number, n in enumerate(used):
        for place in tests[n]["fitted"]:
            if place in tests[n]["silent"]:
                continue
            causes = sum(each[number].get(place, 0) for each in present)
            if causes and comes_and_goes:
                continue
            here = found.setdefault(causes, [0, 0])
            here[0 if place in tests[n]["faulted"] else 1] += 1
    return tuple((causes, *found[causes]) for causes in sorted(found))
