"""A job that rests (for a part, the customer, better weather), work that goes on, and by whom.

What would open a closed job again ends a pause too, whoever does it: work goes on. Not so what is only set
(minutes, prices, rates) or put in order (where a unit goes, what stays as it is): a job may rest meanwhile.
"""

from ..messages import message
from ..messages import sentences
from .fields import Choice
from .fields import Name
from .fields import Text
from .kind import KEPT
from .kind import REOPENS
from .kind import Kind

WHY = ("part", "customer", "weather", "help", "other")

_RESTING = (
    "job_paused",
    "job_handed_over",
    "comes_and_goes_set",
    "rates_set",
    "code_weight_set",
    "reach_set",
    "money_set",
    "unit_moved",
    "unit_seen",
    "left_deliberately",
)


def ends_pause(kind: Kind, data: dict) -> bool:
    """Tell whether an entry says that somebody works on."""
    if kind.name in ("unit_moved", "unit_seen"):
        return data["place"] == "out"
    return kind.after_closing == REOPENS and kind.name not in _RESTING


# Only a job that rests has the field `paused`: others are, byte for byte, what they were before pauses.
def _job_paused(state, event, job) -> None:
    data = event["data"]
    if job["closed"]:
        return
    job["paused"] = {"why": data["why"], "part": data["part"], "note": data["note"], "at": event["at"]}


def _job_resumed(state, event, job) -> None:
    job.pop("paused", None)


# A job that was handed over is that person's until it is handed on, or somebody else works on it.
def _job_handed_over(state, event, job) -> None:
    if not job["closed"]:
        job["handed"] = {"to": event["data"]["to"], "by": event["actor"], "at": event["at"]}


def takes_over(kind: Kind, data: dict, job: dict, actor: str) -> bool:
    """Tell whether an entry is work by somebody else than whom the job was handed to."""
    return "handed" in job and actor != job["handed"]["to"] and ends_pause(kind, data)


def _tell_job_handed_over(names, data) -> dict:
    said = [message("facts-handed-over", to=data["to"])]
    if data["note"]:
        said.append(data["note"])
    return sentences(said)


def _tell_job_paused(names, data) -> dict:
    said = [message("facts-paused", why=data["why"])]
    if data["part"]:
        said.append(message("facts-paused-part", part=data["part"]))
    if data["note"]:
        said.append(data["note"])
    return sentences(said)


KINDS = (
    Kind(
        "job_paused",
        Choice("why", WHY),
        Text("part"),
        Text("note"),
        does=_job_paused,
        tells=_tell_job_paused,
        after_closing=KEPT,
    ),
    Kind(
        "job_handed_over",
        Name("to"),
        Text("note"),
        does=_job_handed_over,
        tells=_tell_job_handed_over,
        after_closing=KEPT,
    ),
    Kind(
        "job_resumed",
        does=_job_resumed,
        tells=("facts-resumed",),
        after_closing=KEPT,
    ),
)
