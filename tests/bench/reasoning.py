"""How long reasoning and the next move take: in CPython and in the phone's worker in a browser.

    python -m tests.bench.reasoning

The case is a car with twelve positions after five tests. Both hosts get the very same text, and
their answers have to be the same bytes before a time counts.
"""

import json
import statistics
import time

from server.core.host import Host
from tests.hosts import PhoneHost

REPEATS = 15
LIMITS_MS = {"cpython": 50, "phone": 400}

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


def measure(call, text: str) -> tuple[str, list[float]]:
    """Return the answer and the milliseconds of each repetition, the first one left out."""
    answer = call(text)
    times = []
    for _ in range(REPEATS):
        start = time.perf_counter()
        answer = call(text)
        times.append((time.perf_counter() - start) * 1000)
    return answer, times


def main() -> int:
    """Print the figures; return 1 when a limit is missed or the hosts differ."""
    failed = False
    phone = PhoneHost()
    try:
        print("case                     host      median ms  fastest ms  limit ms")
        for name, shows in [("12 positions, 5 tests", 0.95), ("... comes and goes", 0.5)]:
            text = json.dumps({"op": "reason", "case": case(shows)})
            answers = {}
            medians = {}
            for host, call in [("cpython", Host().call), ("phone", phone.call)]:
                answers[host], times = measure(call, text)
                medians[host] = statistics.median(times)
                print(f"{name:24} {host:8} {medians[host]:10.1f} {min(times):11.1f} {LIMITS_MS[host]:9}")
                failed = failed or medians[host] > LIMITS_MS[host]
            print(f"{name:24} ratio    {medians['phone'] / medians['cpython']:10.1f}")
            if answers["cpython"] != answers["phone"]:
                print("the two hosts differ")
                failed = True
    finally:
        phone.close()
    return 1 if failed else 0


if __name__ == "__main__":
    raise SystemExit(main())
