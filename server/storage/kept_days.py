"""What whoever runs the server fixes in days: the return window, and the warranty on the work."""

from typing import NamedTuple

from sqlite_utils import Database

from server.core.messages import message
from server.refusals import CommandRefused
from server.storage.folder import change_setting
from server.storage.folder import setting

_MOST_DAYS = 3650


class KeptDays(NamedTuple):
    """One such figure: its name among the settings, what it is at first, and the words of its refusal."""

    name: str
    first: int
    refusal: str

    def of(self, db: Database) -> int:
        """Returns it as this data folder has it."""
        return int(setting(db, self.name) or self.first)

    def change(self, db: Database, days: int) -> None:
        """Changes it; what was decided under another one stays."""
        if not 0 <= days <= _MOST_DAYS:
            raise CommandRefused(message(self.refusal, days=str(days), most=_MOST_DAYS))
        change_setting(db, self.name, str(days))


# How many days after a sensor came off its vehicle a counter takes it back; 0 takes it at any time.
RETURN_WINDOW = KeptDays("return_days", 30, "server-return-days")  # our choice: a month to bring a part back
# How many days after its close a job is under the yard's warranty; at 0 each phone has its own figure.
WARRANTY = KeptDays("warranty_days", 0, "server-warranty-days")


class Days(NamedTuple):
    """What a start of the server changes; None leaves it as it is kept."""

    to_return: int | None = None
    of_warranty: int | None = None

    def keep(self, db: Database) -> None:
        """Changes what is given."""
        if self.to_return is not None:
            RETURN_WINDOW.change(db, self.to_return)
        if self.of_warranty is not None:
            WARRANTY.change(db, self.of_warranty)


AS_KEPT = Days()
