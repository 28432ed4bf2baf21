"""Who makes loop when the connection loop is full, and who counts as one asker."""

from typing import NamedTuple

import pytest

from server.serving.connections import eviction
from server.serving.connections.connection import Stage
from server.serving.connections.limits import Limits
from server.serving.connections.peer import network_of
from server.serving.connections.peer import plain_address

LIMITS = Limits(connections=6, connections_an_address=3, young=2)
NOW = 100.0


class Someone(NamedTuple):
    """What counts of a connection."""

    network: str
    opened: float = 0
    speed: float = 10
    answered: int = 0
    stage: Stage = Stage.HEAD

    def pace(self, at):
        return self.speed


def leaving(inside, newcomer):
    found = eviction.to_leave([*inside, newcomer], newcomer, LIMITS, NOW)
    return None if found is None else [*inside, newcomer].index(found)


@pytest.mark.parametrize(
    ("inside", "newcomer", "expected"),
    [
        ([Someone("a"), Someone("a", 1)], Someone("a", NOW), None),
        ([Someone("a", 1), Someone("a", 2, speed=1), Someone("a", 3)], Someone("a", NOW), 1),
        ([Someone("a", 1), Someone("a", 2), Someone("a", 3)], Someone("a", NOW), 0),
        ([Someone("a", 1), Someone("a", 2), Someone("a", 3)], Someone("b", NOW), None),
        ([Someone("a", 1, 0, answered=1), Someone("a", 2), Someone("a", 3)], Someone("a", NOW), 1),
        ([Someone("a", 99), Someone("a", 98.5), Someone("a", 3, 900)], Someone("a", NOW), 2),
        ([Someone("a", 1, stage=Stage.WORK), Someone("a", 2), Someone("a", 3)], Someone("a", NOW), None),
        ([*(Someone("a", n) for n in range(3)), *(Someone(x) for x in "bcd")], Someone("e", NOW), 0),
        ([Someone(x, stage=Stage.WORK) for x in "abcdef"], Someone("g", NOW), 6),
    ],
    ids=[
        "there is loop",
        "the slowest of the same address",
        "then the oldest",
        "another address has its own share",
        "who was answered stays longer",
        "who is new is let be",
        "whom the app works for does not count",
        "the largest network gives way",
        "nobody else can go",
    ],
)
def test_who_leaves(inside, newcomer, expected):
    assert leaving(inside, newcomer) == expected


@pytest.mark.parametrize(
    ("one", "other", "same"),
    [
        ("192.168.7.9", "192.168.7.9", True),
        ("192.168.7.9", "192.168.7.10", False),
        ("2001:db8:1:2::3", "2001:db8:1:2:ffff::9", True),
        ("2001:db8:1:2::3", "2001:db8:1:3::3", False),
        ("", "", True),
    ],
)
def test_an_ipv6_household_is_one_asker(one, other, same):
    assert (network_of(one) == network_of(other)) is same


def test_ipv4_inside_ipv6_is_written_as_ipv4():
    assert plain_address("::ffff:192.168.7.9") == "192.168.7.9"
    assert plain_address("fe80::1%eth0") == "fe80::1%eth0"
    assert plain_address("somewhere") == "somewhere"
