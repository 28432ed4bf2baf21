"""What a job concludes by itself, without the histories of its units and its vehicle.

Histories are made of these conclusions, so that no two jobs lean on each other in a circle.
"""

from ..infer import explanations
from ..infer import holds
from ..infer.belief import Belief
from ..infer.case_form import read
from ..infer.model import Model
from ..infer.variations import Variations
from ..state import contradictions
from ..state.job import Job
from . import identity_assignments
from . import learned
from . import priors
from . import readings
from . import ways

_EXPLANATIONS = 2


def kept(job: Job, name: str, work):
    """Return what `work()` comes to for a job, under a name; kept until something happens on the job.

    What happens elsewhere can leave tests of it open, or settle that.
    """
    verdicts, known = job.state.verdicts, (len(job.history), contradictions.waiting(job.state, job.facts))
    if name not in verdicts or verdicts[name][0] != known:
        verdicts[name] = (known, work())
    return verdicts[name][1]


def bare_case(job: Job) -> dict:
    """Return the case of a job without histories."""
    case = {
        "positions": readings.positions(job),
        "tests": readings.tests(job),
        "meter": readings.meter(job),
        "rates": readings.rates(job),
        "confidence": readings.confidence(job),
        "likelihoods": priors.likelihoods(job),
    }
    case.update(learned.doubt(job))
    return case


def tested_case(job: Job) -> dict:
    """Return the bare case of a job, without readings of circuits that no test has seen."""
    bare = bare_case(job)
    bare["units"] = []
    bare["meter"] = [each for each in bare["meter"] if _was_tested(bare["tests"], each)]
    return bare


def verdict(job: Job) -> dict | None:
    """Return the verdict of a job; None where it has none, or no test."""
    return kept(job, job.id, lambda: _verdict(job)) if job.tests else None


def _verdict(job: Job) -> dict | None:
    bare = tested_case(job)
    assignments = ways.assignments(job, bare)
    if assignments:
        return identity_assignments.reasoned(bare, assignments, plan=False)["verdict"]
    case = read(bare)
    belief = Belief(Model(case))
    best = explanations.named(belief, explanations.likeliest(belief, _EXPLANATIONS))[0]
    return holds.verdict(best, holds.leading(best, Variations(belief), case), case)


def _was_tested(tests: list, reading: dict) -> bool:
    """Tell whether a test has seen the circuit that was measured; one repaired since shows in none."""
    cause = "circuit:" + reading["position"]
    tested = [each for test in tests for each in test["repaired"] if each == cause]
    return reading["generation"] <= 1 + len(tested)
