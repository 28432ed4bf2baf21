"""What a yard's own jobs teach, as it was taken: outside any job for those to come, on a job for that one.

A job stands on what was recorded on it, as a rule with its opening, so that its record says so by itself, and
what the yard takes or takes back later leaves it as it is. The latest entry of each kind holds.
"""

from ..log import envelope
from ..messages import message
from .amounts import Count
from .amounts import Counts
from .amounts import Rates
from .fields import Text
from .kind import MAY_HAVE_JOB
from .kind import Kind

RATES, MINUTES = "rates_learned", "minutes_learned"


def _learned(state, event, job) -> None:
    said = dict(event["data"])
    said["event"] = envelope.identity(event)
    holder = state.learned
    if job is not None:
        holder = job["learned"] = dict(job.get("learned", {}))
    holder[event["kind"]] = said


# From how many jobs, and up to which entry of the log.
_FROM = (Count("jobs"), Text("upto"))
# By the fingerprint of its seal: what a job of another yard weighed, in hundredths.
_YARDS = Counts("yards_x100", later=True)

KINDS = (
    Kind(
        RATES,
        Rates("rates_ppm"),
        # How many times wrong each class may be, in hundredths.
        Counts("doubts_x100"),
        *_FROM,
        _YARDS,
        does=_learned,
        tells=lambda names, data: message("facts-rates-learned", jobs=data["jobs"]),
        job=MAY_HAVE_JOB,
    ),
    Kind(
        MINUTES,
        Counts("minutes_x100"),
        # By position: until a hand is on its unit.
        Counts("reach_x100"),
        *_FROM,
        does=_learned,
        tells=lambda names, data: message("facts-minutes-learned", jobs=data["jobs"]),
        job=MAY_HAVE_JOB,
    ),
)
