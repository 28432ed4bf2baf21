"""What a maker's trouble codes mean, as people here said on earlier jobs with the same layout."""

from ..codes import troublecode
from ..messages import message
from ..state.job import Job
from .findable import means_in

_MOST_OFFERED = 3


def look(job: Job, code: str, failure_type: str, open_list: bool) -> dict:
    """Return what `troublecode.look` says of a typed code, and "before": [{"means", "words"}], latest first.

    They are offered, never taken by themselves: whoever reads the code knows whether it is the same maker's.
    """
    answer = troublecode.look(code, failure_type, open_list)
    answer["before"] = _before(job, troublecode.without_type(answer["code"])) if answer["code"] else []
    return answer


def _before(job: Job, code: str) -> list[dict]:
    state, said = job.state, {}
    for identity in state.jobs:
        line = state.job_line(identity)
        if line["layout"] != job.layout:
            continue
        means = means_in(state, line)
        for told in sorted(means):
            # What an older version took with its failure type for one code is about the same code.
            if troublecode.without_type(told) != code:
                continue
            key = (-means[told]["at"], identity)
            known = said.get(means[told]["means"])
            if known is None or key < known[0]:
                said[means[told]["means"]] = (key, line["vehicle"])
    offered = []
    for _, means in sorted([(said[each][0], each) for each in said])[:_MOST_OFFERED]:
        vehicle = state.vehicles[said[means][1]]["name"]
        offered.append({"means": means, "words": message("views-code-means", means=means, vehicle=vehicle)})
    return offered
