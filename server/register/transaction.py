"""Runs one serializable transaction, again where another one came between."""

import random
import time
from collections.abc import Callable
from typing import TypeVar

import psycopg
from psycopg.errors import DeadlockDetected
from psycopg.errors import SerializationFailure
from psycopg.errors import UniqueViolation

# SQLSTATE 40001 and 40P01. 23505 is what two that insert one key at one moment may get in place of 40001
# (PostgreSQL's manual, 13.5): run again, the second one reads what the first one wrote.
_AGAIN = (SerializationFailure, DeadlockDetected, UniqueViolation)
_MOST_PAUSE_SECONDS = 0.25
_FIRST_PAUSE_SECONDS = 0.005

Result = TypeVar("Result")


def serializable(connection: psycopg.Connection, work: Callable[[psycopg.Cursor], Result]) -> Result:
    """Returns what `work` made of its cursor, after the commit.

    It is run again for as long as the connection lives, which its lender ends (`Link.lent`).
    """
    pause = _FIRST_PAUSE_SECONDS
    while True:
        try:
            with connection.transaction(), connection.cursor() as cursor:
                return work(cursor)
        except _AGAIN:
            # Those who met here must not meet again: each waits for a time of its own.
            time.sleep(random.uniform(0, pause))  # nosec B311
            pause = min(pause * 2, _MOST_PAUSE_SECONDS)
