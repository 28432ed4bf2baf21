"""How many days after a sensor came off its vehicle a counter takes it back; 0 takes it at any time."""

from sqlite_utils import Database

from server.core.messages import message
from server.refusals import CommandRefused
from server.storage.folder import change_setting
from server.storage.folder import setting

DEFAULT_DAYS = 30  # our choice: a month to bring a part back
_MOST_DAYS = 3650
_SETTING = "return_days"


def return_days(db: Database) -> int:
    """Returns the window of this data folder in days."""
    return int(setting(db, _SETTING) or DEFAULT_DAYS)


def set_return_days(db: Database, days: int) -> None:
    """Changes the window; what was decided under another one stays."""
    if not 0 <= days <= _MOST_DAYS:
        raise CommandRefused(message("server-return-days", days=str(days), most=_MOST_DAYS))
    change_setting(db, _SETTING, str(days))
