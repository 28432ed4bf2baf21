"""Many closed jobs, each with a bad sensor on its way to the parts counter, as a server's log.

One job is gone through for real; the others are the same facts about other vehicles, sensors and labels.
"""

import json
from contextlib import closing
from random import Random

from server.clock import now_ms
from server.core.codes import labels
from server.core.log import envelope
from server.log import events
from tests.core.counter_yard import BAD
from tests.core.counter_yard import proven
from tests.hosts import Core

DEVICE = "d00000000000000b0"
_MINUTE = 60_000
_HOURS_AGO = 30
_SERIAL = "SN-1"


def returned(count: int) -> tuple[list[dict], list[str]]:
    """Return the entries of `count` closed jobs on one phone, and the label of each bad sensor."""
    model = proven(Core(), serial=_SERIAL)
    used = sorted(set(model.labels.values()))
    codes = labels.codes_from(list(Random(5).randbytes(40_000)), 3 * count)
    start = now_ms() - _HOURS_AGO * 60 * _MINUTE
    entries, found = [], []
    for number in range(count):
        fresh = codes[3 * number : 3 * number + 3]
        renamed = dict(zip(used, fresh, strict=True))
        found.append(renamed[model.labels[BAD]])
        names = {"v1": f"v{number:012x}", model.job: f"j{number:012x}", "u00000000new1": f"u{number:012x}",
                 "Blue estate": f"Estate {number + 1}", _SERIAL: serial_of(number), **renamed}  # fmt: skip
        for event in model.events:
            text = json.dumps(event)
            for old, new in names.items():
                text = text.replace(f'"{old}"', f'"{new}"').replace(f'"{old}.', f'"{new}.')
            entries.append(_chained(json.loads(text), entries, start))
    return entries, found


def also(entries: list[dict], kind: str, data: dict, job: str) -> None:
    """Let that phone record one thing more."""
    event = {**entries[-1]["event"], "kind": kind, "data": data, "job": job}
    entries.append(_chained(event, entries, event["at"] - len(entries) * 1000))


def serial_of(number: int) -> str:
    """Return the serial number of the bad sensor of one of those jobs."""
    return f"{_SERIAL}-{number}"


def put_on_server(server, entries: list[dict]) -> None:
    """Let the server have these entries."""
    with closing(server.database()) as db:
        receipt = events.receive(db, entries, None, now_ms())
    assert receipt.refused == []


def _chained(event: dict, before: list[dict], start: int) -> dict:
    seq = len(before) + 1
    event.update(device=DEVICE, seq=seq, prev=before[-1]["hash"] if before else "", at=start + seq * 1000)
    return {"event": event, "hash": envelope.hash_of(event)}
