"""What the reasoning says of each job, worked out once a case: a picture or a label does not change it."""

import json

from ..state.job import Job
from . import discriminate
from . import identity_assignments
from . import job_case
from . import leave_one_out
from . import proof
from . import ways


class Conclusions:
    """Keeps the latest result of each job together with the text of the case that it is of."""

    def __init__(self):
        """Start with nothing worked out."""
        self.reasoned_by_job = {}
        self.concluded_by_job = {}
        self.weighed_by_job = {}

    def reasoned(self, job: Job) -> dict | None:
        """Return the reasoning over a job with its next moves and its proof; None before its first test."""
        if not job.tests:
            return None
        case, possible, text = _case(job)
        kept = self.reasoned_by_job.get(job.id)
        if kept is None or kept[0] != text:
            result = _concluded(job, case, possible, True)
            result["proof"] = proof.ahead(identity_assignments.likeliest(case, result), result)
            kept = (text, result)
            self.reasoned_by_job[job.id] = kept
        return kept[1]

    def concluded(self, job: Job) -> dict | None:
        """Return what a job concludes without its next moves, for those who only read: much quicker."""
        if not job.tests:
            return None
        case, possible, text = _case(job)
        for known in (self.reasoned_by_job, self.concluded_by_job):
            kept = known.get(job.id)
            if kept and kept[0] == text:
                return kept[1]
        result = _concluded(job, case, possible, False)
        self.concluded_by_job[job.id] = (text, result)
        return result

    def weighed(self, job: Job) -> tuple:
        """Return (case, evidence, what tells it from the runner-up), ({}, None, None) untested."""
        result = self.reasoned(job)
        if result is None:
            return {}, None, None
        case = identity_assignments.likeliest(job_case.case_of(job), result)
        text, _ = self.reasoned_by_job[job.id]
        kept = self.weighed_by_job.get(job.id)
        if kept is None or kept[0] != text:
            found = leave_one_out.evidence(case, result)
            told = None
            # Once nothing is left to fix, nothing needs to be told apart any more.
            if found and found["alternative"] and not found["clear"]:
                told = discriminate.apart(case, found["causes"], found["alternative"]["causes"])
            kept = (text, found, told)
            self.weighed_by_job[job.id] = kept
        return case, kept[1], kept[2]


def _concluded(job: Job, case: dict, possible: list, plan: bool) -> dict:
    result = identity_assignments.reasoned(case, possible, plan)
    result["alike"] = ways.alike(job, case)
    return result


def _case(job: Job) -> tuple:
    """Return (case, assignments, both as text): as text, because the case shares lists with the state."""
    case = job_case.case_of(job)
    possible = ways.assignments(job, case)
    return case, possible, json.dumps([case, possible])
