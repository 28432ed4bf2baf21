"""The register's SQL keeps to what PostgreSQL, CockroachDB and YugabyteDB have alike.

None but PostgreSQL is run here; what the others lack is from their documentation and from memory.
"""

import ast
import re
from pathlib import Path

import pytest
from psycopg.errors import SerializationFailure
from psycopg.errors import StatementCompletionUnknown

from server import register
from server.register.tables import _TABLES
from server.register.transaction import serializable

# Locks, notices and sequences are missing, partly there or a bottleneck; an upsert reads nothing.
_NOT_ALIKE = (
    r"\b(LOCK|LISTEN|NOTIFY|FOR UPDATE|FOR SHARE|ON CONFLICT|SEQUENCE|TRIGGER|FUNCTION|TEMP|CTID|XMIN)\b"
    "|_ADVISORY_"
)
_TYPES = {"INT", "BIGINT", "BOOLEAN", "VARCHAR"}
_STATEMENT = r"\s*(SELECT|INSERT|UPDATE|DELETE|CREATE)\b"


def statements():
    """Return each text in the register's modules that begins as SQL does; what is filled in is left out."""
    found = list(_TABLES)
    for file in sorted(Path(register.__file__).parent.glob("*.py")):
        for node in ast.walk(ast.parse(file.read_text())):
            if isinstance(node, ast.JoinedStr):
                parts = [each.value for each in node.values if isinstance(each, ast.Constant)]
                found.append(" ".join(map(str, parts)))
            elif isinstance(node, ast.Constant) and isinstance(node.value, str):
                found.append(node.value)
    return [each for each in found if re.match(_STATEMENT, each)]


def test_no_statement_wants_what_the_others_lack():
    assert len(statements()) > 15
    assert [each for each in statements() if re.search(_NOT_ALIKE, each, re.IGNORECASE)] == []


def test_columns_have_types_that_all_have():
    types = [
        found
        for table in _TABLES
        if "CREATE TABLE" in table
        for found in re.findall(r"[(,]\s*[a-z_]+ ([A-Z]+)", table)
    ]
    assert len(types) > 15
    assert set(types) == _TYPES


def test_no_statement_goes_out_before_the_one_before_it_is_answered():
    """`executemany` sends all at once (psycopg's manual, pipeline mode); engines differ in its errors."""
    modules = sorted(Path(register.__file__).parent.glob("*.py"))
    calls = [
        node.attr
        for file in modules
        for node in ast.walk(ast.parse(file.read_text()))
        if isinstance(node, ast.Attribute)
    ]
    assert "execute" in calls
    assert [each for each in calls if each in ("executemany", "pipeline", "copy")] == []


class Failing:
    """A connection whose first commit ends in an error; `tries` counts the work done on it."""

    def __init__(self, error):
        self.error = error
        self.tries = 0

    def cursor(self):
        return self

    def transaction(self):
        return self

    def __enter__(self):
        return self

    def __exit__(self, *_):
        if self.tries == 1:
            raise self.error

    def work(self, cursor):
        self.tries += 1
        return self.tries


def test_a_conflict_that_shows_at_the_commit_runs_the_whole_transaction_again():
    connection = Failing(SerializationFailure)
    assert serializable(connection, connection.work) == 2


def test_a_commit_whose_outcome_is_not_known_is_not_run_again_by_itself():
    connection = Failing(StatementCompletionUnknown)
    with pytest.raises(StatementCompletionUnknown):
        serializable(connection, connection.work)
    assert connection.tries == 1
