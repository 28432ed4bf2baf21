"""Label codes on paper: drawn once, kept before anything is printed, never drawn again.

A batch is one order of labels. It is on record, with every code, before a file is begun: whatever
happens after that, none of its codes is issued a second time. The same labels are written again only
by `again`, which a person asks for, and only those that are on no sensor.

A folder that was restored from a backup knows nothing of the labels printed after it. So each folder takes
its codes from a share of all there are, and a restored one from another share.
"""

import json
import secrets
from typing import NamedTuple

from sqlite_utils import Database

from server.core.codes import labels
from server.core.errors import BadInput
from server.core.messages import message
from server.labelling.states import FREE
from server.labelling.states import batch_options
from server.labelling.states import labels_of
from server.phones.installation import installation_id
from server.storage import writing

MOST_LABELS = 2000  # in one batch

_BYTES_A_ROUND = 4096
_ROUNDS_WITHOUT_ANY = 50


class Printing(NamedTuple):
    """One time that labels of a batch are written, with the codes."""

    batch: int
    id: int
    codes: list[str]


def issue(db: Database, count: int, base: str, options: dict[str, str], now: int) -> Printing:
    """Draws `count` new codes and keeps them as a batch, in the layout that `options` give."""
    if not 1 <= count <= MOST_LABELS:
        raise BadInput("count", count, message("server-range", least=1, most=MOST_LABELS))
    with writing(db):
        codes = _draw(count, _taken(db), labels.share_of(installation_id(db)))
        batch: int = db.conn.execute(
            "INSERT INTO label_batches (made_at, base, layout) VALUES (?, ?, ?) RETURNING id",
            [now, base, json.dumps(options, sort_keys=True)],
        ).fetchone()[0]
        db.conn.executemany(
            "INSERT INTO labels (code, batch) VALUES (?, ?)", [(code, batch) for code in codes]
        )
        return Printing(batch, _begin(db, batch, len(codes), now), codes)


def again(db: Database, batch: int, now: int) -> Printing:
    """Takes the labels of a batch that are on no sensor and not void, to write them once more."""
    batch_options(db, batch)  # refuses a batch that there is not
    with writing(db):
        codes = _free(db, batch)
        if not codes:
            raise BadInput("batch", batch, message("server-batch-left"))
        return Printing(batch, _begin(db, batch, len(codes), now), codes)


def left(db: Database, batch: int) -> int:
    """Returns how many labels of a batch are on no sensor and not void."""
    return len(_free(db, batch))


def done(db: Database, printing: int, now: int) -> None:
    """Notes that the file is written whole."""
    with writing(db):
        db.conn.execute("UPDATE label_prints SET done_at = ? WHERE id = ?", [now, printing])


def void(db: Database, batch: int, codes: list[str], reason: str, now: int) -> list[str]:
    """Takes labels of a batch that are on no sensor out of use for good; returns which.

    `codes` names some; none means all that are left. One that is on a sensor is voided on the page of
    that sensor, because the record of the sensor has to say so.
    """
    if not reason.strip():
        raise BadInput("reason", reason, message("server-reason"))
    with writing(db):
        known = {label.code: label.state for label in labels_of(db, batch)}
        for code in codes:
            if known.get(code) != FREE:
                use = message(
                    "server-label-use",
                    code=labels.shown(code),
                    state=known.get(code, "elsewhere").replace(" ", "-"),
                )
                raise BadInput("code", (use,), message("server-label-free"))
        gone = codes or [code for code, state in known.items() if state == FREE]
        first = _last_void(db) + 1
        db.conn.executemany(
            "UPDATE labels SET void_at = ?, void_reason = ?, void_number = ? WHERE code = ?",
            [(now, reason.strip(), number, code) for number, code in enumerate(gone, first)],
        )
    return gone


def voided(db: Database, known: int) -> list[str] | None:
    """Returns all codes that went out of use, None to who knows so many: none ever comes back.

    Apps from before numbers were kept ask so.
    """
    if _last_void(db) == known:
        return None
    rows = db.conn.execute("SELECT code FROM labels WHERE void_number IS NOT NULL ORDER BY code")
    return [code for (code,) in rows]


def voided_after(db: Database, number: int, most: int) -> tuple[list[str], int, bool]:
    """Returns codes that went out of use behind a number, in that order, the last one's number, and whether
    there are more.
    """
    rows = db.conn.execute(
        "SELECT code, void_number FROM labels WHERE void_number > ? ORDER BY void_number LIMIT ?",
        [number, most],
    ).fetchall()
    upto = rows[-1][1] if rows else number
    return [code for code, _ in rows], upto, upto < _last_void(db)


def batch_with(db: Database, code: str) -> int | None:
    """Returns the batch that a code was printed in, or None."""
    row = db.conn.execute("SELECT batch FROM labels WHERE code = ?", [code]).fetchone()
    return row[0] if row else None


def _free(db: Database, batch: int) -> list[str]:
    return [label.code for label in labels_of(db, batch) if label.state == FREE]


def _last_void(db: Database) -> int:
    """Returns the number of the label that went out of use last, which is how many did."""
    last: int | None = db.conn.execute("SELECT max(void_number) FROM labels").fetchone()[0]
    return last or 0


def _begin(db: Database, batch: int, count: int, now: int) -> int:
    printing: int = db.conn.execute(
        "INSERT INTO label_prints (batch, begun_at, labels) VALUES (?, ?, ?) RETURNING id",
        [batch, now, count],
    ).fetchone()[0]
    return printing


def _taken(db: Database) -> set[str]:
    """Returns every code printed here, and every one that an event names."""
    taken = {code for (code,) in db.conn.execute("SELECT code FROM labels")}
    rows = db.conn.execute(
        "SELECT body FROM events WHERE kind IN "
        "('unit_labelled', 'unit_added', 'label_voided', 'labels_printed')"
    )
    for (body,) in rows:
        data = json.loads(body)["data"]
        codes = data.get("codes")
        taken.update(map(str, [data.get("code"), *(codes if isinstance(codes, list) else [])]))
    return taken


def _draw(count: int, taken: set[str], share: int) -> list[str]:
    """Returns new codes of a share, and of the others once it is used up."""
    codes: list[str] = []
    for within in (True, False):
        fruitless = 0
        while len(codes) < count and fruitless < _ROUNDS_WITHOUT_ANY:
            random_bytes = list(secrets.token_bytes(_BYTES_A_ROUND))
            new = labels.codes_from(
                random_bytes, _BYTES_A_ROUND, taken | set(codes), share=share if within else None
            )
            fruitless = 0 if new else fruitless + 1
            codes += new[: count - len(codes)]
    if len(codes) < count:
        raise BadInput("count", count, message("server-codes-left", count=len(codes)))
    return codes
