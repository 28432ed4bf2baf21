"""The demo's log: every fact goes through the core's own check, chained as a phone chains it."""

import hashlib
import json
from typing import NamedTuple

from demo_db.dice import Dice
from server.core.host import Host
from server.core.log import envelope
from server.photos import jpeg

_CODE_BYTES = 4000
_CODES = 60


class StoryBroken(Exception):
    """The core refused what the story wanted to do next, or led it somewhere else."""


class Phone:
    """A device with its chain of events; `slow` is how far its clock lags, in milliseconds."""

    def __init__(self, device: str, actor: str, slow: int = 0):
        """Start a new chain."""
        self.device = device
        self.actor = actor
        self.slow = slow
        self.seq = 0
        self.prev = ""


class Place(NamedTuple):
    """Where an event stands: what a correction has to name."""

    device: str
    seq: int


class Log:
    """The events and pictures of the demo, in the order in which the server receives them."""

    def __init__(self, base: str):
        """Start empty; `base` is the address on the labels."""
        self.base = base
        self.entries: list[dict] = []
        self.photos: dict[str, bytes] = {}
        self._host = Host()
        self._codes: list[str] = self.ask(
            "codes", random=list(Dice("labels").bytes(_CODE_BYTES)), count=_CODES
        )

    def ask(self, op: str, **arguments):
        """Return what the core answers."""
        answer = json.loads(self._host.call(json.dumps({**arguments, "op": op})))
        if not answer["ok"]:
            raise StoryBroken(f"{op}: {answer['error']['message']}")
        return answer["value"]

    def resume(self, entries: list[dict]) -> None:
        """Go on from events that are stored already."""
        self.entries = entries
        self.ask("reset", events=entries)

    def record(self, phone: Phone, job: str | None, at: int, drafts: list[dict]) -> Place:
        """Record drafts at a time, all or none; returns where the last of them stands."""
        asked = [{**draft, "job": job, "actor": phone.actor, "device": phone.device} for draft in drafts]
        refusal = self.ask("check", events=asked)["refusal"]
        if refusal:
            raise StoryBroken(f"{job}: {refusal['title']}. {refusal['sentence']}")
        batch = [self._chained(phone, job, at, draft) for draft in drafts]
        self.ask("add", events=batch)
        self.entries += batch
        return Place(phone.device, phone.seq)

    def keep_photo(self, data: bytes) -> dict:
        """Keep a picture and return the fields that name it in an event."""
        digest = hashlib.sha256(data).hexdigest()
        self.photos[digest] = data
        picture = jpeg.read(data)
        return {
            "sha256": digest,
            "mime": "image/jpeg",
            "bytes": len(data),
            "width": picture.width,
            "height": picture.height,
        }

    def fresh_label(self) -> str:
        """Take the next label off the roll; returns its code."""
        return self._codes.pop(0)

    def last_label(self) -> str:
        """Take the last label of the roll; returns its code."""
        return self._codes.pop()

    def more_labels(self, count: int) -> list[str]:
        """Return the codes of another roll of labels."""
        drawn = list(Dice("another roll").bytes(_CODE_BYTES * 4))
        codes: list[str] = self.ask("codes", random=drawn, count=count, taken=self._codes)
        return codes

    def label_text(self, code: str) -> str:
        """Return what a phone reads off a label."""
        return f"{self.base}/U/{code}".upper()

    def _chained(self, phone: Phone, job: str | None, at: int, draft: dict) -> dict:
        event = {
            "device": phone.device,
            "seq": phone.seq + 1,
            "prev": phone.prev,
            "v": envelope.FORMAT_VERSION,
            "at": at - phone.slow,
            "actor": phone.actor,
            "job": job,
            "kind": draft["kind"],
            "data": draft["data"],
        }
        digest = envelope.hash_of(event)
        phone.seq, phone.prev = event["seq"], digest
        return {"event": event, "hash": digest}
