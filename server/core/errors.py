"""The exceptions of the core, declared together so that the edges can turn each into words.

Only the edges (command line, HTTP, the worker on the phone) catch them.
"""


class BadInput(Exception):
    """Something handed in is not of the form that is wanted; names the field and both sides."""

    def __init__(self, field: str, found, wanted: str):
        """Keep what was wrong; `found` is shown shortened, `wanted` says what would be right."""
        self.field = field
        self.found = shorten(found)
        self.wanted = wanted
        super().__init__(self.message())

    def message(self) -> str:
        """Return the one line that a person reads."""
        return "{}: found {}, wanted {}".format(self.field, self.found, self.wanted)

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


def shorten(value, limit: int = 60) -> str:
    """Return `value` as text for an error message, cut so that the line stays readable."""
    text = '"' + value + '"' if isinstance(value, str) else _plain(value)
    return text if len(text) <= limit else text[: limit - 1] + "…"


def _plain(value) -> str:
    """Describe a value without relying on repr, which differs between the two hosts."""
    if value is None:
        return "nothing"
    if value is True:
        return "true"
    if value is False:
        return "false"
    if isinstance(value, int):
        return str(value)
    if isinstance(value, float):
        return "a number with decimals"
    if isinstance(value, list):
        return "a list of {}".format(len(value))
    if isinstance(value, dict):
        return "an object with {} keys".format(len(value))
    return "something else"
