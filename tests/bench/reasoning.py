"""How long reasoning and the next move take: in CPython and in the phone's worker in a browser.

    python -m tests.bench.reasoning

What a case says (the verdict with its variations) is timed alone; what the whole answer takes more is
the next moves'. First a car with twelve positions after five tests, then one with three suspects after
six tests, at 4 to 24 positions. Both hosts get the very same text, and their answers have to be the same
bytes before a time counts. Times are processor time, which a busy machine does not stretch: of this process,
and of all processes of the browser together (so the phone's figure is on the high side).
"""

import argparse
import json
import os
import time
from pathlib import Path

from server.core.host import Host
from tests.hosts import PhoneHost

REPEATS = 15
# Of the phone, in milliseconds: for the verdict, for the moves.
LIMITS_MS = {"12 positions, 5 tests": (40, 80), "12 positions, 3 suspects, 6 tests": (40, 150)}
COMES_AND_GOES_MS = (40, 300)
SIZES = [4, 6, 8, 12, 16, 20, 24]
TICK_MS = 1000 / os.sysconf("SC_CLK_TCK")

NAMES = ["left outer", "left inner", "right inner", "right outer"]
POSITIONS = [
    *({"id": f"rear-{n}".replace(" ", "-"), "name": f"rear {n}", "group": "rear"} for n in NAMES),
    *({"id": f"front-{n}".replace(" ", "-"), "name": f"front {n}", "group": "front"} for n in NAMES),
    *(
        {"id": f"side-{side}-{end}", "name": f"{side} side {end}", "group": "side"}
        for side in ("left", "right")
        for end in ("front", "rear")
    ),
]
STEPS = [
    # exchanged before the test, cleaned before it, showing a fault in it
    ([], [], ["rear-right-outer", "front-left-outer"]),
    ([], ["front-left-outer"], ["rear-right-outer"]),
    ([("rear-right-outer", "rear-right-inner")], [], ["rear-right-inner", "side-left-rear"]),
    ([("side-left-rear", "side-right-rear")], [], ["rear-right-inner"]),
    ([], [], ["rear-right-inner", "side-left-rear"]),
]


def case(shows: float) -> dict:
    """Return the case; `shows` is lower for a fault that comes and goes."""
    fitted = {position["id"]: f"u{n:02}" for n, position in enumerate(POSITIONS)}
    tests = []
    for exchanged, cleaned, faulted in STEPS:
        for one, other in exchanged:
            fitted[one], fitted[other] = fitted[other], fitted[one]
        tests.append({"fitted": dict(fitted), "cleaned": cleaned, "faulted": faulted})
    return {
        "positions": [position | {"reach_minutes": 3} for position in POSITIONS],
        "units": [{"id": unit, "part": "P1"} for unit in sorted(fitted.values())],
        "tests": tests,
        "rates": {"shows": shows},
    }


def grown(size: int, shows: float) -> dict:
    """Return a car with `size` positions and three suspects after six tests."""
    names = [f"p{n:02}" for n in range(size)]
    fitted = {name: f"u{n:02}" for n, name in enumerate(names)}
    suspects = [names[0], names[size // 2], names[-1]]
    tests = [{"fitted": dict(fitted), "faulted": suspects}]
    # One left the position clean, one was cleaned; nothing of it settles any of the three.
    tests.append({"fitted": dict(fitted), "faulted": suspects, "cleaned": [names[0]]})
    fitted[names[0]], fitted[names[1]] = fitted[names[1]], fitted[names[0]]
    for shown in (suspects[1:], suspects, suspects[1:], suspects):
        tests.append({"fitted": dict(fitted), "faulted": shown})
    return {
        "positions": [{"id": name, "group": f"g{n * 3 // size}"} for n, name in enumerate(names)],
        "units": [{"id": unit, "part": "P1"} for unit in sorted(fitted.values())],
        "tests": tests,
        "rates": {"shows": shows},
    }


def after(case_: dict, tests: int) -> dict:
    """Return a case as it stood after so many tests."""
    return case_ | {"tests": case_["tests"][:tests]}


def spent_ms(pid: int) -> float:
    """Return the processor time of the processes below this one."""
    spent = 0.0
    for task in Path(f"/proc/{pid}/task").glob("*/children"):
        for child in task.read_text().split():
            fields = Path(f"/proc/{child}/stat").read_text().rpartition(")")[2].split()
            spent += (int(fields[11]) + int(fields[12])) * TICK_MS + spent_ms(int(child))
    return spent


def measure(call, text: str, clock, repeats: int = REPEATS) -> tuple[str, float]:
    """Return the answer and the mean milliseconds of a repetition, the first one left out."""
    answer = call(text)
    start = clock()
    for _ in range(repeats):
        answer = call(text)
    return answer, (clock() - start) / repeats


def compare(name: str, case_: dict, phone: PhoneHost, limits: tuple | None) -> bool:
    """Print one line for a case; return whether it holds."""
    held = True
    cpython, there = [], []
    for plan in (False, True):
        text = json.dumps({"op": "reason", "case": case_, "plan": plan})
        mine, took = measure(Host().call, text, lambda: time.process_time() * 1000)
        theirs, took_there = measure(phone.call, text, lambda: spent_ms(os.getpid()))
        held = held and mine == theirs
        cpython.append(took)
        there.append(took_there)
    note = "" if held else "  the two hosts differ"
    verdict, moves = there[0], there[1] - there[0]
    mine_too = f"{cpython[0]:8.1f} {cpython[1] - cpython[0]:8.1f}"
    bound = ""
    if limits:
        held = held and verdict <= limits[0] and moves <= limits[1]
        bound = f"{limits[0]:5} {limits[1]:5}"
    print(f"{name:36} {mine_too} {verdict:9.1f} {moves:8.1f} {bound}{note}", flush=True)
    return held


def main() -> int:
    """Print the figures; return 1 when a limit is missed or the hosts differ."""
    parser = argparse.ArgumentParser(description="how long the verdict and the next moves take")
    parser.add_argument("--size", type=int, action="append", metavar="N", help="only cars of N positions")
    sizes = parser.parse_args().size or SIZES
    phone = PhoneHost()
    held = True
    try:
        print(f"{'milliseconds':36} cpython: verdict, moves   phone: verdict, moves   limits", flush=True)
        for shows, more in [(0.95, ""), (0.5, ", comes and goes")]:
            rows = [("12 positions, 5 tests", case(shows))]
            # The most there ever is to plan: later a certain cause is dealt with at once.
            rows.append(("12 positions, 1 test", after(case(shows), 1)))
            rows.append(("12 positions, 3 suspects, 1 test", after(grown(12, shows), 1)))
            rows += [(f"{size} positions, 3 suspects, 6 tests", grown(size, shows)) for size in sizes]
            for name, case_ in rows:
                limits = LIMITS_MS.get(name)
                held = (
                    compare(name + more, case_, phone, COMES_AND_GOES_MS if limits and more else limits)
                    and held
                )
    finally:
        phone.close()
    return 0 if held else 1


if __name__ == "__main__":
    raise SystemExit(main())
