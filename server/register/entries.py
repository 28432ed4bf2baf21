"""What is asked of a register and entered into it, each in one serializable transaction.

Every one that writes reads the keys first: a serializable transaction is held against what it has read, and
an INSERT that does nothing where a row is there has read nothing.
"""

from typing import TYPE_CHECKING
from typing import NamedTuple

from server.core.codes.numbers import plain
from server.core.facts.fields import NAME

if TYPE_CHECKING:
    from psycopg import Cursor

# What a register has room for, in characters. The log takes longer numbers.
MOST_KEY = 400
MOST_PART = 80
MOST_UNIT = NAME[1]  # as long as any id may be

ACCEPT = "accept"
_COLUMNS = "counter, unit, place, part, decision, settled, knowing, decided_at"


class Entry(NamedTuple):
    """One return as the register has it.

    `counter` is its id, `place` the host that people know it by. `settled` is that the decision is on the
    counter's own record; before, it is only begun. `knowing` is that who refused knew of the others. `at` is
    in milliseconds UTC, by the counter's clock.
    """

    counter: str
    unit: str
    place: str
    part: str
    decision: str
    settled: bool
    knowing: bool
    at: int


class Contradiction(NamedTuple):
    """What another counter decided that contradicts a decision of this one, on which of its units."""

    unit: str
    place: str
    decision: str
    at: int


def is_key(text: str) -> bool:
    """Tells whether a return can be found by a text; NUL is what PostgreSQL has in none."""
    return 0 < len(text) <= MOST_KEY and "\x00" not in text


def part_that_fits(part: str) -> str:
    """Returns a part number, cut to what a register has room for."""
    return part.replace("\x00", "")[:MOST_PART]


def others(cursor: "Cursor", keys: list[str], counter: str, part: str) -> list[Entry]:
    """Returns what other counters entered under one of `keys`, each return once, the earliest first.

    Nobody notes a part's maker; its part number stands for it. So a serial number under another part
    number is another part's.
    """
    return _apart(_under(cursor, keys), counter, part)


def claim(cursor: "Cursor", keys: list[str], mine: Entry) -> list[Entry]:
    """Begins to accept a return: enters it where no other counter has, and returns those that have.

    Of several that do so at one moment exactly one is given []; when that one asks again, it is again.
    """
    rows = _under(cursor, keys)
    there = _apart(rows, mine.counter, mine.part)
    if not there:
        _put(cursor, rows, keys, mine._replace(settled=_is_settled(rows, mine)))
    return there


def enter(cursor: "Cursor", keys: list[str], mine: Entry) -> list[Entry]:
    """Enters what a counter has decided, whatever others have; returns those that it contradicts."""
    rows = _under(cursor, keys)
    against = [each for each in _apart(rows, mine.counter, mine.part) if _contradict(mine, each)]
    _put(cursor, rows, keys, mine)
    _forget_keys(cursor, keys, mine)
    _forget_contradictions(cursor, mine.counter, mine.unit)
    for each in against:
        for row in (_told(mine, each), _told(each, mine)):
            cursor.execute(
                "INSERT INTO swaptrail_contradictions "
                "(counter, unit, other, other_unit, place, decision, decided_at) "
                "VALUES (%s, %s, %s, %s, %s, %s, %s)",
                row,
            )
    return against


def withdraw(cursor: "Cursor", counter: str, unit: str, *, only_begun: bool = False) -> None:
    """Takes a return back out: its decision was taken back or, `only_begun`, never came on record."""
    begun = " AND NOT settled" if only_begun else ""
    cursor.execute(f"DELETE FROM swaptrail_returns WHERE counter = %s AND unit = %s{begun}", [counter, unit])
    if not only_begun:
        _forget_contradictions(cursor, counter, unit)


def contradictions(cursor: "Cursor", counter: str) -> list[Contradiction]:
    """Returns what contradicts a counter's decisions, the latest first."""
    cursor.execute(
        "SELECT unit, place, decision, decided_at FROM swaptrail_contradictions WHERE counter = %s "
        "ORDER BY decided_at DESC, unit, other, other_unit",
        [counter],
    )
    return [Contradiction(*row) for row in cursor.fetchall()]


def _under(cursor: "Cursor", keys: list[str]) -> list[tuple[str, Entry]]:
    """Returns what stands under keys, with the key."""
    if not keys:
        return []
    marks = ", ".join(["%s"] * len(keys))
    cursor.execute(f"SELECT key, {_COLUMNS} FROM swaptrail_returns WHERE key IN ({marks})", keys)
    return [(key, Entry(*columns)) for key, *columns in cursor.fetchall()]


def _apart(rows: list[tuple[str, Entry]], counter: str, part: str) -> list[Entry]:
    found = {
        (entry.counter, entry.unit): entry
        for _, entry in rows
        if entry.counter != counter and _same_part(entry.part, part)
    }
    return sorted(found.values(), key=lambda entry: (entry.at, entry.counter, entry.unit))


def _same_part(one: str, other: str) -> bool:
    return not one or not other or plain(one) == plain(other)


def _contradict(mine: Entry, other: Entry) -> bool:
    """Tells whether two decisions cannot both be right: a part is taken back once; what is refused, never."""
    if ACCEPT not in (mine.decision, other.decision) or not other.settled:
        return False
    return mine.decision == other.decision or not (mine.knowing or other.knowing)


def _is_settled(rows: list[tuple[str, Entry]], mine: Entry) -> bool:
    """Tells whether what this counter begins anew is on its record already."""
    return any(each.settled for _, each in rows if (each.counter, each.unit) == (mine.counter, mine.unit))


def _put(cursor: "Cursor", rows: list[tuple[str, Entry]], keys: list[str], mine: Entry) -> None:
    """Writes a return under each of its keys, `rows` being what stood there."""
    there = {key for key, each in rows if (each.counter, each.unit) == (mine.counter, mine.unit)}
    for key in keys:
        if key in there:
            cursor.execute(
                "UPDATE swaptrail_returns SET place = %s, part = %s, decision = %s, settled = %s, "
                "knowing = %s, decided_at = %s WHERE key = %s AND counter = %s AND unit = %s",
                [*mine[2:], key, mine.counter, mine.unit],
            )
        else:
            cursor.execute(
                f"INSERT INTO swaptrail_returns (key, {_COLUMNS}) "
                "VALUES (%s, %s, %s, %s, %s, %s, %s, %s, %s)",
                [key, *mine],
            )


def _forget_keys(cursor: "Cursor", keys: list[str], mine: Entry) -> None:
    """Takes the keys away that a return no longer has, such as a serial number that was put right."""
    named = [mine.counter, mine.unit]
    cursor.execute("SELECT key FROM swaptrail_returns WHERE counter = %s AND unit = %s", named)
    for (key,) in cursor.fetchall():
        if key not in keys:
            cursor.execute(
                "DELETE FROM swaptrail_returns WHERE key = %s AND counter = %s AND unit = %s", [key, *named]
            )


def _forget_contradictions(cursor: "Cursor", counter: str, unit: str) -> None:
    named = [counter, unit]
    cursor.execute(
        "SELECT other, other_unit FROM swaptrail_contradictions WHERE counter = %s AND unit = %s", named
    )
    for other in cursor.fetchall():
        for pair in ((*named, *other), (*other, *named)):
            cursor.execute(
                "DELETE FROM swaptrail_contradictions "
                "WHERE counter = %s AND unit = %s AND other = %s AND other_unit = %s",
                pair,
            )


def _told(whose: Entry, other: Entry) -> tuple:
    """Returns the row by which a counter learns of the other's decision."""
    return (whose.counter, whose.unit, other.counter, other.unit, other.place, other.decision, other.at)
