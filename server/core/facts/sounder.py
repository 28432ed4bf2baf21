"""What was gone through because nothing proves that the self-test ran: fuse, supply, sounder and so on."""

from .fields import Choice
from .fields import Name
from .kind import Kind

FOUND = ("good", "mended", "unclear")


def _sounder_checked(state, event, job) -> None:
    # Only a job on which this was done has the list.
    entry = {"check": event["data"]["check"], "found": event["data"]["found"]}
    entry["tests_before"] = len(job["tests"])
    job.setdefault("sounder", []).append(entry)


def _tell_sounder_checked(names, data) -> dict:
    title = data["check"]
    for check in names.sort.sounder.checks if names.sort.sounder else ():
        if check["id"] == data["check"]:
            title = check["title"]
    return names.sort.says("facts-sounder-checked", check=title, found=data["found"])


KINDS = (
    Kind(
        "sounder_checked",
        Name("check"),
        Choice("found", FOUND),
        does=_sounder_checked,
        tells=_tell_sounder_checked,
    ),
)
