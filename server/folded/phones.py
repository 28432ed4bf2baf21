"""What is said of phones, as the fold takes it (`server/core/facts/whose.py`), from the table `phones`."""

import json
from typing import Any

from sqlite_utils import Database

_ROWS = "SELECT n, device, from_seq, role, name, people FROM phones"


def of(db: Database, device: str) -> list[dict]:
    """Returns what is said of a phone, the earlier first."""
    return [row for _, row in _read(db, "WHERE device = ? ORDER BY from_seq, n", [device])]


def after(db: Database, n: int) -> tuple[list[dict], int]:
    """Returns what is said of all phones behind row `n`, and the number of the last row."""
    rows = _read(db, "WHERE n > ? ORDER BY n", [n])
    return [row for _, row in rows], rows[-1][0] if rows else n


class Phones(dict):
    """What is said of each phone, read when it is first asked for."""

    def __init__(self, db: Database):
        """Starts with nothing read."""
        super().__init__()
        self._db = db

    def __contains__(self, device: object) -> bool:
        """Tells whether anything is said of a phone."""
        return bool(self.get(device))

    def get(self, device: Any, default: Any = None) -> Any:
        """Returns what is said of a phone, `default` where nothing is."""
        if not dict.__contains__(self, device):
            self[device] = of(self._db, device)
        return self[device] or default


def _read(db: Database, where: str, values: list) -> list[tuple[int, dict]]:
    return [
        (n, {"device": device, "from": first, "role": role, "name": name, "people": json.loads(people)})
        for n, device, first, role, name, people in db.conn.execute(f"{_ROWS} {where}", values)
    ]
