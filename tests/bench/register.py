"""What the register of a chain carries: clients that accept the same parts at once, also with the database
killed in the midst, and a look-up as the register grows.

    python -m tests.bench.register [--clients 50] [--parts 1000] [--returns 10000000]
"""

import argparse
import random
import statistics
import threading
import time
from collections import Counter
from collections.abc import Callable
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from contextlib import ExitStack
from contextlib import closing
from contextlib import contextmanager

import psycopg

from server.register import address
from server.register import entries
from server.register.entries import Entry
from server.register.link import Link
from server.register.link import opened
from server.register.transaction import serializable
from server.register.trouble import NotReached
from tests.postgres import Postgres

FIRST_RETURNS = 100_000
LOOK_UPS = 3000
CLIENT_SECONDS = 30.0  # for one claim: 50 clients on few cores wait for one another
KILLS = 2
PAUSE_SECONDS = 0.1  # of a client that does not reach the register
_FILL = """
INSERT INTO swaptrail_returns
SELECT key, 'c' || n %% 40, 'u' || n, 'counter-' || n %% 40 || '.example', 'PS-1', 'accept', true, false, n
FROM generate_series(%(first)s::bigint, %(last)s::bigint) AS n,
LATERAL (VALUES ('label ' || upper(substr(md5('l' || n), 1, 10)) || ' counter-' || n %% 40 || '.example'),
                ('serial ' || upper(substr(md5('s' || n), 1, 12)))) AS made (key)
"""


def main() -> None:
    """Prints the figures."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--clients", type=int, default=50, help="0 for the look-ups alone")
    parser.add_argument("--parts", type=int, default=1000)
    parser.add_argument("--returns", type=int, default=10_000_000)
    asked = parser.parse_args()
    options = ("fsync=on", "max_connections=120", "shared_buffers=512MB", "max_wal_size=8GB")
    with closing(Postgres(options)) as server:
        if asked.clients:
            print_claims("at once", server, asked.clients, asked.parts, kills=0)
            print_claims(f"database killed {KILLS} times", server, asked.clients, asked.parts, kills=KILLS)
        print_look_ups(server, asked.returns)


def print_claims(what: str, server: Postgres, clients: int, parts: int, *, kills: int) -> None:
    """Lets all clients accept all parts in the same order, and counts who was given what."""
    url = server.new_register()
    given: list[list[int]] = [[] for _ in range(clients)]
    tried, again = Counter(), Counter()
    ready = threading.Barrier(clients + 1)

    def accept_all(client: int) -> None:
        link = Link(address.checked(url), seconds=CLIENT_SECONDS, most=1)
        ready.wait()
        for part in range(parts):
            keys = [f"label {part} maker.example", f"serial S{part}"]
            mine = Entry(f"c{client}", f"u{part}", f"c{client}.example", "PS-1", "accept", False, False, part)
            while True:
                try:
                    link.connect()
                    there = link.done(lambda cursor, keys=keys, mine=mine: entries.claim(cursor, keys, mine))
                    break
                except NotReached:
                    again[client] += 1
                    time.sleep(PAUSE_SECONDS)
            tried[client] += 1
            if not there:
                given[client].append(part)
        link.close()

    with ThreadPoolExecutor(clients) as pool:
        done = [pool.submit(accept_all, client) for client in range(clients)]
        ready.wait()
        start = time.perf_counter()
        for n in range(kills):
            while sum(tried.values()) < clients * parts * (n + 1) // (kills + 1):
                time.sleep(0.05)
            server.kill()
            server.start()
        for each in done:
            each.result()
        seconds = time.perf_counter() - start
    owners = Counter(part for parts_of_one in given for part in parts_of_one)
    with closing(opened(address.checked(url))) as connection:
        rows = connection.execute("SELECT key, counter FROM swaptrail_returns").fetchall()
    entered = {(key, counter) for key, counter in rows}
    wanted = {
        (key, f"c{client}")
        for client in range(clients)
        for part in given[client]
        for key in (f"label {part} maker.example", f"serial S{part}")
    }
    twice = sum(count > 1 for count in owners.values())
    print(
        f"{what}: {clients} clients, {parts} parts, {clients * parts} claims in {seconds:.0f} s "
        f"({clients * parts / seconds:.0f}/s, {sum(again.values())} asked again); given {len(owners)}, "
        f"twice {twice}, told and not entered {len(wanted - entered)}, "
        f"entered and not told {len(entered - wanted)}"
    )


def print_look_ups(server: Postgres, most: int) -> None:
    """Times a look-up by label and serial number in a small register and in a large one, turn about.

    What else the machine does meanwhile then weighs on both alike.
    """
    sizes = (min(FIRST_RETURNS, most), most)
    with ExitStack() as registers:
        connections = [registers.enter_context(_filled(server, returns)) for returns in sizes]
        known = [_known(*each) for each in zip(connections, sizes, strict=True)]
        unknown = [_unknown(connection) for connection in connections]
        for what, look_ups in (("known", known), ("unknown", unknown)):
            took = list(zip(*([_timed(each) for each in look_ups] for _ in range(LOOK_UPS)), strict=True))
            medians = [statistics.median(each) for each in took]
            for size, median, times in zip(sizes, medians, took, strict=True):
                late = sorted(times)[LOOK_UPS * 99 // 100]
                print(
                    f"{size} returns, {what}: median {median * 1000:.3f} ms, "
                    f"99 of 100 within {late * 1000:.3f} ms"
                )
            print(f"{what}: {medians[1] / medians[0]:.2f} times the smaller one")


@contextmanager
def _filled(server: Postgres, returns: int) -> Iterator[psycopg.Connection]:
    """Gives a connection to a new register with so many returns."""
    with closing(opened(address.checked(server.new_register()))) as connection:
        connection.autocommit = True
        for first in range(1, returns + 1, 1_000_000):
            connection.execute(_FILL, {"first": first, "last": min(first + 999_999, returns)})
        connection.execute("VACUUM ANALYZE swaptrail_returns")
        yield connection


def _known(connection, returns: int) -> Callable[[], None]:
    """Returns what looks up a random return that is there."""
    made = random.Random(5)
    found = (
        "SELECT array[upper(substr(md5('l' || %s::text), 1, 10)), upper(substr(md5('s' || %s::text), 1, 12))]"
    )
    numbers = [made.randint(1, returns) for _ in range(LOOK_UPS)]
    keys = []
    for n in numbers:
        label, serial = connection.execute(found, [n, n]).fetchone()[0]
        keys.append([f"label {label} counter-{n % 40}.example", f"serial {serial}"])
    left = iter(keys)

    def _known_one() -> None:
        there = serializable(connection, lambda cursor: entries.others(cursor, next(left), "", ""))
        assert there

    return _known_one


def _unknown(connection) -> Callable[[], None]:
    """Returns what looks up a return that nobody has."""
    made = random.Random(7)

    def _unknown_one() -> None:
        keys = [f"label {made.getrandbits(40):X} counter-3.example", f"serial {made.getrandbits(48):X}"]
        assert serializable(connection, lambda cursor: entries.others(cursor, keys, "", "")) == []

    return _unknown_one


def _timed(look_up: Callable[[], None]) -> float:
    start = time.perf_counter()
    look_up()
    return time.perf_counter() - start


if __name__ == "__main__":
    main()
