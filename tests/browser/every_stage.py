"""Jobs that stand at every kind of step, each on a vehicle of its own, as one log of a server.

Three stories are gone through once; wherever they come to a kind of step for the first time, the facts up
to there are kept as a job by themselves.
"""

import hashlib
import json
from contextlib import closing
from random import Random

from server.clock import now_ms
from server.core.codes import labels
from server.core.log import envelope
from server.log import events
from server.photos import store as photo_store
from tests.core.counter_yard import proven
from tests.core.driver import DEVICE as DRIVEN
from tests.core.driver import Driver
from tests.core.driver import home
from tests.core.scenarios import INNER
from tests.core.scenarios import OUTER
from tests.core.scenarios import SCENARIOS
from tests.hosts import Core
from tests.static.pictures import encoded
from tests.static.pictures import picture

DEVICE, OTHER_DEVICE = "d00000000000000c0", "d00000000000000c1"
_NO_PICTURE = "ab" * 32  # what the driver names; nobody took it
_IMAGE = encoded(picture())
#: The one picture that every job on the server has.
DIGEST = hashlib.sha256(_IMAGE).hexdigest()
_IN_HAND = "u00000000more"
_OTHERS = ("twelve", "own_names", "rear_of_eight")


class Watched(Driver):
    """A driver that keeps the facts up to each kind of step it comes to."""

    def __init__(self):
        """Start on a core of its own."""
        super().__init__(Core())
        self.stages: dict[str, list[dict]] = {}

    def force(self, kind, **data):
        """Fold a fact, and look at the step behind it."""
        super().force(kind, **data)
        step = self.step()
        self.stages.setdefault(step["form"] or step["id"].partition(".")[0], [*self.events])


def stages() -> dict[str, list[dict]]:
    """Return the facts of one job for each kind of step, and of a few more that look unlike the others."""
    followed = Watched().begin()
    followed.test(OUTER)
    followed.photograph()
    followed.exchange(rear_right_outer=home(INNER), rear_right_inner=home(OUTER))
    followed.test(INNER)
    followed.new_unit(INNER)
    followed.guided()
    followed.test()
    # A second one in hand: each is told from the other before it is put away.
    followed.force("unit_added", unit=_IN_HAND, part="PS-1", serial="", code=followed._fresh(), how="scanned",
                   place="out")  # fmt: skip
    for _ in range(30):
        step = followed.step()
        if step["id"] == "done":
            break
        if step["form"] == "test":
            followed.test()
        elif step["action"] and step["action"]["events"]:
            followed.tap()
        else:
            followed.choose(0)
    stayed = Watched()
    SCENARIOS["wiring_repaired"](stayed)
    shared = Watched().begin()
    shared.test("rear-left-outer", "rear-left-inner", INNER, OUTER)
    found = {**shared.stages, **stayed.stages, **followed.stages}
    disputed = Watched()
    SCENARIOS["disputed"](disputed)
    found["contradiction"] = disputed.events
    for name in _OTHERS:
        job = Driver(Core())
        SCENARIOS[name](job)
        found[name] = job.events
    found["returned"] = proven(Core()).events
    return found


def put_on_server(server) -> tuple[dict[str, str], dict[str, str]]:
    """Let a server have all these jobs with a picture each.

    Returns the id of each job by its kind of step, and the label of each unit.
    """
    codes = iter(labels.codes_from(list(Random(7).randbytes(60_000)), 400))
    entries: list[dict] = []
    jobs = {}
    start = now_ms() - 3_600_000
    for number, (stage, facts) in enumerate(stages().items(), 1):
        jobs[stage] = f"j{number:012x}"
        text = json.dumps(facts)
        names = {_NO_PICTURE: DIGEST, "u00000000new1": f"u{number:012x}", "v1": f"v{number:012x}"}
        names[_IN_HAND] = f"u1{number:011x}"
        names |= {old: next(codes) for old in sorted(set(_codes(facts)))}
        for old, new in names.items():
            text = text.replace(f'"{old}"', f'"{new}"').replace(f'"{old}.', f'"{new}.')
        for event in json.loads(text):
            entries.append(_chained({**event, "job": jobs[stage]}, entries, start))
    with closing(server.database()) as db:
        photo_store.keep(db, server.data / "photos", DIGEST, _IMAGE, now_ms())
        receipt = events.receive(db, entries, None, now_ms())
    assert receipt.refused == []
    worn = [entry["event"]["data"] for entry in entries if entry["event"]["kind"] == "unit_labelled"]
    return jobs, {each["unit"]: each["code"] for each in worn}


def _codes(facts: list[dict]) -> list[str]:
    return [fact["data"]["code"] for fact in facts if fact["data"].get("code") and "unit" in fact["data"]]


def _chained(event: dict, entries: list[dict], start: int) -> dict:
    """Return an entry of one of the two phones behind those that it has made."""
    device = DEVICE if event["device"] == DRIVEN else OTHER_DEVICE
    before = [each for each in entries if each["event"]["device"] == device]
    event.update(
        device=device,
        seq=len(before) + 1,
        prev=before[-1]["hash"] if before else "",
        at=start + (len(entries) + 1) * 1000,
    )
    return {"event": event, "hash": envelope.hash_of(event)}
