"""The register of returns on a real PostgreSQL: who is given a part, and what contradicts is told to both."""

import threading
from concurrent.futures import ThreadPoolExecutor
from contextlib import closing

import pytest

from server.register import address
from server.register import entries
from server.register import tables
from server.register.entries import Contradiction
from server.register.entries import Entry
from server.register.link import opened
from server.register.transaction import serializable

A = Entry("ia", "u00000000000a", "north.example", "PS-1", "accept", False, False, 1000)
B = Entry("ib", "u00000000000b", "south.example", "PS-1", "accept", False, False, 2000)
KEYS = ["label AAAAA north.example", "serial S1"]


@pytest.fixture
def connection(url):
    with closing(opened(address.checked(url))) as connection:
        yield connection


@pytest.fixture
def do(connection):
    """Runs one of `entries` in a transaction of its own."""
    return lambda work, *given, **more: serializable(connection, lambda cursor: work(cursor, *given, **more))


def test_a_part_is_given_to_the_first_counter_and_to_that_one_again(do):
    assert do(entries.others, KEYS, "ia", "PS-1") == []
    assert do(entries.claim, KEYS, A) == []
    assert do(entries.claim, KEYS, B) == [A]
    assert do(entries.claim, KEYS, A) == []
    assert do(entries.others, KEYS, "ib", "PS-1") == [A]
    assert do(entries.others, KEYS, "ia", "PS-1") == []


@pytest.mark.parametrize(
    ("part", "found"),
    [("PS-1", [A]), ("ps 1", [A]), ("", [A]), ("XX-9", [])],
    ids=["same", "plain", "none", "other"],
)
def test_a_serial_number_is_the_same_part_only_under_the_same_part_number(do, part, found):
    do(entries.claim, KEYS, A)
    assert do(entries.claim, ["serial S1"], B._replace(part=part)) == found


def test_what_was_begun_and_never_recorded_is_given_back(do):
    do(entries.claim, KEYS, A)
    do(entries.withdraw, "ia", A.unit, only_begun=True)
    assert do(entries.claim, KEYS, B) == []
    do(entries.enter, KEYS, B._replace(settled=True))
    do(entries.withdraw, "ib", B.unit, only_begun=True)
    assert do(entries.others, KEYS, "ia", "") == [B._replace(settled=True)]


def test_two_decisions_that_cannot_both_be_right_are_told_to_both_until_one_is_taken_back(do):
    mine, other = A._replace(settled=True), B._replace(settled=True)
    assert do(entries.enter, KEYS, mine) == []
    assert do(entries.enter, KEYS, other) == [mine]
    assert do(entries.enter, KEYS, other) == [mine]  # entered once more, it is told once
    assert do(entries.contradictions, "ia") == [Contradiction(A.unit, "south.example", "accept", 2000)]
    assert do(entries.contradictions, "ib") == [Contradiction(B.unit, "north.example", "accept", 1000)]
    do(entries.withdraw, "ib", B.unit)
    assert (do(entries.contradictions, "ia"), do(entries.contradictions, "ib")) == ([], [])


def test_what_was_only_begun_contradicts_as_soon_as_it_is_on_record(do):
    do(entries.claim, KEYS, A)
    other = B._replace(settled=True)
    assert do(entries.enter, KEYS, other) == []
    assert do(entries.enter, KEYS, A._replace(settled=True)) == [other]
    assert len(do(entries.contradictions, "ib")) == 1


@pytest.mark.parametrize(
    ("first", "second", "contradicts"),
    [
        ({"decision": "refuse"}, {}, True),
        ({}, {"decision": "refuse"}, True),
        ({}, {"decision": "refuse", "knowing": True}, False),
        ({}, {"knowing": True}, True),
        ({"decision": "refuse"}, {"decision": "refuse"}, False),
    ],
    ids=["refused before", "refused after", "refused for that", "accepted all the same", "both refused"],
)
def test_a_part_is_taken_back_once_and_what_is_refused_never(do, first, second, contradicts):
    do(entries.enter, KEYS, A._replace(settled=True, **first))
    assert bool(do(entries.enter, KEYS, B._replace(settled=True, **second))) is contradicts


def test_a_key_that_a_return_no_longer_has_is_forgotten(do):
    do(entries.enter, KEYS, A._replace(settled=True))
    do(entries.enter, KEYS[:1], A._replace(settled=True))
    assert do(entries.others, KEYS[1:], "ib", "") == []
    assert len(do(entries.others, KEYS[:1], "ib", "")) == 1


def test_making_the_tables_again_leaves_what_is_there(do, connection):
    do(entries.claim, KEYS, A)
    tables.make(connection)
    assert tables.standing(connection) == tables.Standing(1, 1, 1, 0)


COUNTERS, PARTS = 8, 25


def test_of_counters_that_accept_the_same_parts_at_once_one_is_given_each(url):
    ready = threading.Barrier(COUNTERS)

    def accept_all(number):
        counter = f"i{number}"
        with closing(opened(address.checked(url))) as connection:
            ready.wait()
            return [
                part
                for part in range(PARTS)
                if not serializable(
                    connection,
                    lambda cursor, part=part: entries.claim(
                        cursor, [f"label {part}", f"serial {part}"], A._replace(counter=counter)
                    ),
                )
            ]

    with ThreadPoolExecutor(COUNTERS) as pool:
        given = [part for parts in pool.map(accept_all, range(COUNTERS)) for part in parts]
    assert sorted(given) == list(range(PARTS))
