"""What a data folder's own log has to enter into the register, from where it was entered up to.

Whatever is recorded of a return has it entered as it then stands. So everything may be entered any number of
times, and is, from the start, where the log has another epoch (`log/epoch.py`) than the one that was entered.
"""

import json
from typing import NamedTuple

from sqlite_utils import Database

from server.core.facts.corrections import KINDS_OF_CORRECTION
from server.log import events
from server.phones.installation import installation_id
from server.storage.folder import change_setting
from server.storage.folder import setting

SETTING = "register_entered"
_AT_ONCE = 500  # entries of the log
_OF_RETURNS = ("return_received", "return_decided")


class Due(NamedTuple):
    """Sensors whose returns are to be entered, and how far the log is then entered."""

    units: list[str]
    upto: int


def due(db: Database) -> Due | None:
    """Returns the next sensors to enter; None where everything is."""
    upto, last = entered_upto(db), events.last_n(db)
    if upto >= last:
        return None
    kinds = (*_OF_RETURNS, *KINDS_OF_CORRECTION)
    marks = ", ".join("?" * len(kinds))
    rows = db.conn.execute(
        f"SELECT n, kind, body FROM events WHERE n > ? AND kind IN ({marks}) ORDER BY n LIMIT ?",
        [upto, *kinds, _AT_ONCE],
    ).fetchall()
    units = {unit for _, kind, body in rows for unit in _units(db, kind, json.loads(body)["data"])}
    return Due(sorted(units), rows[-1][0] if len(rows) == _AT_ONCE else last)


def waiting(db: Database) -> int:
    """Returns how many decisions are not entered yet; what is held is entered nowhere."""
    count: int = db.conn.execute(
        "SELECT count(*) FROM events WHERE n > ? AND kind = 'return_decided' "
        "AND json_extract(body, '$.data.decision') != 'hold'",
        [entered_upto(db)],
    ).fetchone()[0]
    return count


def entered_upto(db: Database) -> int:
    """Returns up to which entry of the log everything is in the register."""
    of, _, upto = (setting(db, SETTING) or "").partition(" ")
    return int(upto) if of == installation_id(db) else 0


def note(db: Database, upto: int) -> None:
    """Keeps how far the log is entered."""
    change_setting(db, SETTING, f"{installation_id(db)} {upto}")


def _units(db: Database, kind: str, data: dict) -> list[str]:
    """Returns the returned sensors that an entry names, or that the entry names which it corrects."""
    if kind in _OF_RETURNS:
        return [data["unit"]]
    row = db.conn.execute(
        "SELECT kind, body FROM events WHERE device = ? AND seq = ?", [data["device"], data["seq"]]
    ).fetchone()
    return [json.loads(row[1])["data"]["unit"]] if row and row[0] in _OF_RETURNS else []
