"""Issues label codes: random, and never one that was printed or written on a sensor before.

A folder that was restored from a backup knows nothing of the labels printed after it. So each folder takes
its codes from a share of all there are, and a restored one from another share.
"""

import hashlib
import json
import secrets

from sqlite_utils import Database

from server.core import labels
from server.installation import installation_id
from server.refusals import CommandRefused
from server.storage import writing

_BYTES_A_ROUND = 4096
_ROUNDS_WITHOUT_ANY = 50
_SHARES = 16


def share_of(installation: str) -> int:
    """Returns which share of all codes the folder with this installation id takes its own from."""
    return int(installation, 16) % _SHARES


def issue(db: Database, count: int, base: str, now: int) -> list[str]:
    """Returns `count` new codes and keeps them as issued."""
    with writing(db):
        taken = _taken(db)
        codes = _draw(count, taken, share_of(installation_id(db)))
        batch = db.conn.execute(
            "INSERT INTO label_batches (made_at, base) VALUES (?, ?)", [now, base]
        ).lastrowid
        db.conn.executemany(
            "INSERT INTO labels (code, batch) VALUES (?, ?)", [(code, batch) for code in codes]
        )
    return codes


def _taken(db: Database) -> set[str]:
    """Returns every code printed here, and every one that an event names."""
    taken = {code for (code,) in db.conn.execute("SELECT code FROM labels")}
    rows = db.conn.execute(
        "SELECT body FROM events WHERE kind IN ('unit_labelled', 'unit_added', 'label_voided')"
    )
    taken.update(str(json.loads(body)["data"].get("code")) for (body,) in rows)
    return taken


def _draw(count: int, taken: set[str], share: int) -> list[str]:
    """Returns new codes of a share, and of the others once it is used up."""
    codes: list[str] = []
    for within in (True, False):
        fruitless = 0
        while len(codes) < count and fruitless < _ROUNDS_WITHOUT_ANY:
            random_bytes = list(secrets.token_bytes(_BYTES_A_ROUND))
            drawn = labels.codes_from(random_bytes, _BYTES_A_ROUND, taken | set(codes))
            new = [code for code in drawn if not within or _share(code) == share]
            fruitless = 0 if new else fruitless + 1
            codes += new[: count - len(codes)]
    if len(codes) < count:
        raise CommandRefused(
            f"Only {len(codes)} of {count} codes are left that were never issued here. Ask for fewer."
        )
    return codes


def _share(code: str) -> int:
    return hashlib.sha256(code.encode()).digest()[0] % _SHARES
