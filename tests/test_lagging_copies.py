"""The server's data come back from random earlier moments: nothing is lost that any phone still has.

Its database is put back alone, its folder as a whole with `rejoin` or with nothing said, or a backup is
restored; replies get lost on the way, phones say that they have seen what never was, and in half of the walks
one phone is never seen again. SWAPTRAIL_LONG=1 takes many more and longer walks.
"""

import pytest

from server.keeping.verify.data_folder import FOLDER
from tests.long_runs import times
from tests.returning_server import ReturningServer
from tests.returning_server import held_by

SEEDS, STEPS = times(3, 30), times(100, 400)


@pytest.mark.parametrize("seed", range(SEEDS))
def test_nothing_is_lost_that_any_phone_still_has(tmp_path, seed):
    server = ReturningServer(tmp_path, seed)
    try:
        for _ in range(STEPS):
            server.step()
        left = server.phones[seed % 2 :]
        held = [held_by(phone) for phone in left]

        server.heal(left)

        log = server.log()
        for entries in held:
            assert entries.items() <= log.items()
        for phone in left:
            assert held_by(phone) == log
            assert sorted(phone.confirmed()) == list(range(1, len(log) + 1))
        assert FOLDER.first_fault(server.folder.root) is None
        assert server.returns > 0
        assert sum(phone.started_over for phone in left) > 0
    finally:
        server.end()
