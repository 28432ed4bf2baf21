"""The tables of a register, in SQL for PostgreSQL that is meant for CockroachDB and YugabyteDB too.

`swaptrail_returns` has a row for each key of a return, so that a look-up is one walk down the primary key,
however many returns there are. `swaptrail_contradictions` has those pairs of decisions that cannot both be
right, once for each of the two counters: each asks for its own.
"""

from typing import NamedTuple

import psycopg

from server.register.entries import MOST_KEY
from server.register.entries import MOST_PART
from server.register.entries import MOST_UNIT
from server.register.transaction import serializable

FORM = 1

_TABLES = (
    "CREATE TABLE IF NOT EXISTS swaptrail_register (form INT PRIMARY KEY)",
    f"""CREATE TABLE IF NOT EXISTS swaptrail_returns (
        key VARCHAR({MOST_KEY}) NOT NULL,
        counter VARCHAR(64) NOT NULL,
        unit VARCHAR({MOST_UNIT}) NOT NULL,
        place VARCHAR(300) NOT NULL,
        part VARCHAR({MOST_PART}) NOT NULL,
        decision VARCHAR(8) NOT NULL,
        settled BOOLEAN NOT NULL,
        knowing BOOLEAN NOT NULL,
        decided_at BIGINT NOT NULL,
        PRIMARY KEY (key, counter, unit)
    )""",
    "CREATE INDEX IF NOT EXISTS swaptrail_returns_of ON swaptrail_returns (counter, unit)",
    f"""CREATE TABLE IF NOT EXISTS swaptrail_contradictions (
        counter VARCHAR(64) NOT NULL,
        unit VARCHAR({MOST_UNIT}) NOT NULL,
        other VARCHAR(64) NOT NULL,
        other_unit VARCHAR({MOST_UNIT}) NOT NULL,
        place VARCHAR(300) NOT NULL,
        decision VARCHAR(8) NOT NULL,
        decided_at BIGINT NOT NULL,
        PRIMARY KEY (counter, unit, other, other_unit)
    )""",
)


class Standing(NamedTuple):
    """What a register holds: its form (None where there are no tables), and how much."""

    form: int | None
    returns: int
    counters: int
    contradictions: int


def make(connection: psycopg.Connection) -> None:
    """Makes the tables that are not there; what is there stays."""
    connection.autocommit = True  # distributed engines change their schema in no transaction with other work
    for statement in _TABLES:
        connection.execute(statement)
    connection.autocommit = False

    def note(cursor: psycopg.Cursor) -> None:
        if cursor.execute("SELECT form FROM swaptrail_register").fetchone() is None:
            cursor.execute("INSERT INTO swaptrail_register (form) VALUES (%s)", [FORM])

    serializable(connection, note)


def standing(connection: psycopg.Connection) -> Standing:
    """Returns what is there; counts, so it is for people who ask, not for every return."""
    with connection.transaction(), connection.cursor() as cursor:
        form = form_of(cursor)
        if form is None:
            return Standing(None, 0, 0, 0)
        counted = (
            "SELECT count(*), count(DISTINCT counter) "
            "FROM (SELECT DISTINCT counter, unit FROM swaptrail_returns) AS each_one"
        )
        returns, counters = cursor.execute(counted).fetchone() or (0, 0)
        pairs = cursor.execute("SELECT count(*) FROM swaptrail_contradictions").fetchone() or (0,)
        return Standing(form, returns, counters, pairs[0] // 2)


def form_of(cursor: psycopg.Cursor) -> int | None:
    """Returns the form of the register's tables, None where there are none."""
    there = (
        "SELECT 1 FROM information_schema.tables "
        "WHERE table_name = 'swaptrail_register' AND table_schema = current_schema()"
    )
    if cursor.execute(there).fetchone() is None:
        return None
    row = cursor.execute("SELECT form FROM swaptrail_register").fetchone()
    return row[0] if row else None
