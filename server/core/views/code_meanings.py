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
    answer["before"] = _before(job, answer["code"]) if answer["code"] else []
    return answer


def _before(job: Job, code: str) -> list[dict]:
    state, said = job.state, {}
    for identity in state.jobs:
        line = state.job_line(identity)
        if line["layout"] != job.layout:
            continue
        means = means_in(state, line)
        if code in means:
            key = (-means[code]["at"], identity)
            known = said.get(means[code]["means"])
            if known is None or key < known[0]:
                said[means[code]["means"]] = (key, line["vehicle"])
    offered = []
    for _, means in sorted([(said[each][0], each) for each in said])[:_MOST_OFFERED]:
        vehicle = state.vehicles[said[means][1]]["name"]
        offered.append({"means": means, "words": message("views-code-means", means=means, vehicle=vehicle)})
    return offered
