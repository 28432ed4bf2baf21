"""What became of the labels that were printed: still on paper, on a sensor, or void.

Which label is on a sensor is what the events say, so it is read from the folded state. A label that was
torn or lost before it was on anything has no sensor whose record could say so; that stands here alone.
"""

import json
from typing import NamedTuple

from sqlite_utils import Database

from server.core.errors import BadInput
from server.core.messages import message
from server.folded import catch_up

FREE, ON, VOID = "on paper", "on a sensor", "void"
STATES = (FREE, ON, VOID)

_NEWEST = "(SELECT body FROM folded WHERE kind = '{}' AND id = {} ORDER BY bucket DESC LIMIT 1)"
_HOLDER = f"json_extract({_NEWEST.format('code', 'labels.code')}, '$')"
_LABELS = f"""
    WITH held AS (SELECT code, batch, void_reason, {_HOLDER} AS holder FROM labels {{}})
    SELECT code, batch, void_reason, holder, CASE
        WHEN holder IS NULL THEN CASE WHEN void_reason IS NULL THEN '{FREE}' ELSE '{VOID}' END
        WHEN EXISTS (SELECT 1 FROM json_each({_NEWEST.format("unit", "holder")}, '$.old_codes')
                     WHERE value = code) THEN '{VOID}'
        ELSE '{ON}' END AS state
    FROM held"""


class Label(NamedTuple):
    """One printed label: its state, the unit whose label it is or was, why it is void before any."""

    code: str
    state: str
    unit: str | None
    reason: str | None


class Batch(NamedTuple):
    """One order of labels, and what became of them."""

    id: int
    made_at: int
    options: dict[str, str]
    counts: dict[str, int]  # by state
    printed: int  # how often it was written
    finished: bool  # whether its last file was written whole


def batches(db: Database) -> list[Batch]:
    """Returns all batches, the newest first."""
    catch_up(db)
    counts: dict[int, dict[str, int]] = {}
    tally = f"SELECT batch, state, count(*) FROM ({_LABELS.format('')}) GROUP BY batch, state"
    for batch, state, count in db.conn.execute(tally):
        counts.setdefault(batch, dict.fromkeys(STATES, 0))[state] = count
    rows = db.conn.execute(
        "SELECT id, made_at, layout, (SELECT count(*) FROM label_prints WHERE batch = label_batches.id), "
        "(SELECT done_at FROM label_prints WHERE batch = label_batches.id ORDER BY id DESC LIMIT 1) "
        "FROM label_batches ORDER BY id DESC"
    )
    return [
        # Before prints were kept, a batch was written once, at its making.
        Batch(id, made_at, json.loads(layout), counts[id], prints or 1, not prints or done is not None)
        for id, made_at, layout, prints, done in rows
    ]


def labels_of(db: Database, batch: int) -> list[Label]:
    """Returns the labels of a batch in the order of their codes; the state must be in step."""
    rows = db.conn.execute(_LABELS.format("WHERE batch = ? ORDER BY code"), [batch])
    return [Label(code, state, unit, reason) for code, _, reason, unit, state in rows]


def batch_options(db: Database, batch: int) -> dict[str, str]:
    """Returns the options of the layout in which a batch was made."""
    catch_up(db)
    row = db.conn.execute("SELECT layout FROM label_batches WHERE id = ?", [batch]).fetchone()
    if row is None:
        raise BadInput("batch", batch, message("server-batch-number"))
    options: dict[str, str] = json.loads(row[0])
    return options
