"""Numbers, lists, dates and units as text: one rule of our own, the same in static/words/figures.js.

The libraries on the two sides round, group and date differently, so none of them formats a figure. What a
language does its own way (marks, order, names of months) are messages of its `figures.ftl`.
"""

from collections.abc import Callable
from datetime import datetime
from datetime import tzinfo

#: Says a message of `figures.ftl`: (id, arguments) -> text.
Say = Callable[[str, dict], str]

_VERDICT = 950_000_000  # parts per billion
# The times that are shown, in milliseconds: from 1970 to what the log takes in (core/log/envelope.py). What
# was kept with another one has a day and a time that nobody knows.
TOO_LATE = 253_370_764_800_000


class Figures:
    """The figures of one language."""

    def __init__(self, say: Say, zone: tzinfo | None = None) -> None:
        """`say` says the language's figures; `zone` is where dates are read, this machine's if left out."""
        self._say = say
        self._zone = zone

    def whole(self, number: int) -> str:
        """Returns an integer with its groups marked, as in '12,345'."""
        digits = str(abs(number))
        if len(digits) >= int(self._mark("group-from")):
            head = len(digits) % 3 or 3
            groups = [digits[:head]] + [digits[at : at + 3] for at in range(head, len(digits), 3)]
            digits = self._mark("group").join(groups)
        return self._mark("minus") + digits if number < 0 else digits

    def decimal(self, units: int, places: int) -> str:
        """Returns `units` of 10 to the minus `places`, as in (1205, 2) -> '12.05'."""
        scale = 10**places
        whole, rest = divmod(abs(units), scale)
        text = self.whole(whole)
        if places:
            text += self._mark("decimal") + str(rest).rjust(places, "0")
        return self._mark("minus") + text if units < 0 else text

    def percent(self, ppb: int) -> str:
        """Returns a probability in parts per billion as people read it.

        Whole percent; one decimal above 95, just below it, and below 5, where it matters; never a false 0,
        95 or 100.
        """
        if ppb > 999_500_000:
            return self._say("figures-percent-over", {"number": self.decimal(999, 1)})
        if ppb < 500_000:
            return self._say("figures-percent-under", {"number": self.decimal(1, 1)})
        tenths = (ppb + 500_000) // 1_000_000
        if 945_000_000 <= ppb < _VERDICT:
            # Never 95 for what does not reach it: that is where a verdict begins.
            tenths = ppb // 1_000_000
        elif 50 <= tenths <= 950:
            return self._say("figures-percent", {"number": self.whole((ppb + 5_000_000) // 10_000_000)})
        return self._say("figures-percent", {"number": self.decimal(tenths, 1)})

    def listed(self, items: list[str], last: str) -> str:
        """Returns 'a', 'a and b' or 'a, b and c'; `last` is 'and' or 'or'.

        A language may choose its word by how the item begins (`sounds`), as Spanish does: 'derecho e
        izquierdo'.
        """
        if not items:
            return ""
        text = items[0]
        for at, item in enumerate(items[1:], 1):
            joint = f"figures-{last}" if at == len(items) - 1 else "figures-then"
            text = self._say(joint, {"before": text, "item": item, "sounds": item.lstrip("¿¡“")[:2].lower()})
        return text

    def day(self, at: int) -> str:
        """Returns the day of a time in milliseconds since 1970."""
        if not is_known(at):
            return self._say("figures-unknown-day", {})
        then = self._then(at)
        month = self._say(f"figures-month-{then.month}", {})
        return self._say("figures-day", {"day": str(then.day), "month": month, "year": str(then.year)})

    def time(self, at: int) -> str:
        """Returns the time of day of a time in milliseconds since 1970."""
        if not is_known(at):
            return self._say("figures-unknown-time", {})
        then = self._then(at)
        return self._say(
            "figures-time", {"hour": str(then.hour).rjust(2, "0"), "minute": str(then.minute).rjust(2, "0")}
        )

    def moment(self, at: int) -> str:
        """Returns day and time of day."""
        if not is_known(at):
            return self._say("figures-unknown-time", {})
        return self._say("figures-moment", {"day": self.day(at), "time": self.time(at)})

    def _then(self, at: int) -> datetime:
        return datetime.fromtimestamp(at // 1000, self._zone).astimezone(self._zone)

    def _mark(self, name: str) -> str:
        return self._say(f"figures-mark-{name}", {})


def is_known(at: int) -> bool:
    """Tells whether a time is one that can be shown."""
    return 0 <= at < TOO_LATE
