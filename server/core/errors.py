"""The exceptions of the core, declared together so that the edges can turn each into words.

Only the edges (command line, HTTP, the worker on the phone) catch them.
"""

from .messages import message


class BadInput(Exception):
    """Something handed in is not of the form that is wanted; names the field and both sides."""

    def __init__(self, field: str, found, wanted):
        """Keep what was wrong; `found` is shown shortened, `wanted`, a message, says what would be right."""
        self.field = field
        self.called = None  # what the field is called on the screen where it is typed, a message
        self.found = shorten(found)
        self.wanted = wanted
        super().__init__(field)

    def message(self) -> dict:
        """Return the one line that a person reads."""
        if self.called:
            return message("refusals-typed", field=self.called, found=self.found, wanted=self.wanted)
        return message("refusals-bad-input", field=self.field, found=self.found, wanted=self.wanted)

    def as_dict(self) -> dict:
        """Return the one error shape that HTTP, worker and command line share."""
        return {
            "field": self.field,
            "found": self.found,
            "wanted": self.wanted,
            "message": self.message(),
        }


class NotLoaded(Exception):
    """An answer needs what is not in memory: these jobs, or, where it names none, the whole log."""

    def __init__(self, jobs: list):
        """Keep the ids of the jobs."""
        self.jobs = jobs
        super().__init__("not in memory: {}".format(", ".join(jobs) or "the log"))


def shorten(value, limit: int = 60):
    """Return `value` for an error message: quoted text, cut so that the line stays readable, or a message."""
    if not isinstance(value, str):
        return _plain(value)
    text = '"' + value + '"'
    return text if len(text) <= limit else text[: limit - 1] + "…"


def _plain(value):
    """Describe a value without relying on repr, which differs between the two hosts."""
    if value is None:
        return message("refusals-found-nothing")
    if value is True:
        return "true"
    if value is False:
        return "false"
    if isinstance(value, int):
        return str(value)
    if isinstance(value, float):
        return message("refusals-found-decimals")
    if isinstance(value, list):
        return message("refusals-found-list", count=len(value))
    if isinstance(value, dict):
        if "msg" in value:
            return value
        return message("refusals-found-object", count=len(value))
    return message("refusals-found-else")
