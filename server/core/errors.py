"""The exceptions of the core, declared together so that the edges can turn each into words.

Only the edges (command line, HTTP, the worker on the phone) catch them.
"""

from .messages import message


class BadInput(Exception):
    """Something handed in is not of the form that is wanted; names the field and both sides."""

    def __init__(self, field: str, found, wanted):
        """Keep what was wrong; `found` is shown shortened, `wanted`, a message, says what would be right.

        What describes the found, text or a message, stands in a tuple, which no JSON from outside can hold.
        """
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
    if isinstance(value, tuple):
        return value[0]
    if isinstance(value, str):
        return _cut('"' + value + '"', limit)
    found = _plain(value)
    return _cut(found, limit) if isinstance(found, str) else found


def _cut(text: str, limit: int) -> str:
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
        return _decimal(value) or message("refusals-found-decimals")
    if isinstance(value, list):
        return message("refusals-found-list", count=len(value))
    if isinstance(value, dict):
        return message("refusals-found-object", count=len(value))
    return message("refusals-found-else")


def _decimal(value: float) -> str:
    """Return a float as it is written with up to six decimals; "" where it has more, or is too large."""
    size = -value if value < 0 else value
    if not size < 1000000000:
        return ""
    units = int(size * 1000000 + 0.5)
    if float(units) / 1000000.0 != size:
        return ""
    text = "{}.{:06d}".format(units // 1000000, units % 1000000)
    while text.endswith("0") and not text.endswith(".0"):
        text = text[:-1]
    return "-" + text if value < 0 else text
