"""Finds what a record is of, and asks the database for the entries that the core wants in it."""

import json
import re
from typing import NamedTuple

from sqlite_utils import Database

from server.core.codes import labels
from server.core.errors import shorten
from server.core.messages import message
from server.folded import FoldedState
from server.folded import phones
from server.folded.corrections import ARE_CORRECTIONS
from server.log import named
from server.log import proof
from server.log.proof import SignedHead
from server.refusals import CommandRefused

_UNIT = re.compile(r"u[0-9a-f]{12}|v[0-9a-f]{12}\.\S{1,80}")


class Unknown(CommandRefused):
    """Nothing on record goes by the name."""


class BadName(CommandRefused):
    """The name can be none of a sensor, label or job."""


class Subject(NamedTuple):
    """Whose record it is: a unit or a job, the other one ""."""

    unit: str
    job: str


class Entry(NamedTuple):
    """An event of the log with its place in it."""

    n: int
    device: str
    seq: int
    hash: str
    body: str
    event: dict

    @property
    def units(self) -> list[str]:
        """The units that it names."""
        return named.units(self.event, self.body)


class Log:
    """The log in the database, as the core asks it."""

    def __init__(self, db: Database):
        """Opens nothing."""
        self._db = db

    def of_job(self, job: str) -> list[Entry]:
        """Returns the entries of a job."""
        return self._rows("WHERE job = ?", [job])

    def outside_jobs(self, unit: str) -> list[Entry]:
        """Returns the entries outside jobs that name a unit."""
        return self._rows("JOIN event_units USING (n) WHERE unit = ? AND job IS NULL", [unit])

    def naming(self, unit: str) -> list[Entry]:
        """Returns the entries that name a unit."""
        return self._rows("JOIN event_units USING (n) WHERE unit = ?", [unit])

    def corrections(self) -> list[Entry]:
        """Returns the entries that take another back or put it right."""
        return self._rows(f"WHERE {ARE_CORRECTIONS}", [])

    def _rows(self, where: str, values: list) -> list[Entry]:
        rows = self._db.conn.execute(
            f"SELECT n, device, seq, hash, body FROM events {where} ORDER BY n", values
        )
        return [
            Entry(n, device, seq, digest, body, json.loads(body)) for n, device, seq, digest, body in rows
        ]


def subject_of(state: FoldedState, name: str) -> Subject:
    """Returns what a unit's id, the code on a label or a job's id means; refuses what means nothing."""
    if name in state.jobs:
        return Subject("", name)
    unit = state.now(name)
    if unit in state.units:
        return Subject(unit, "")
    read = labels.parse(name)
    if read["outcome"] == "ours":
        if read["code"] not in state.codes:
            raise Unknown(message("keeping-no-label", code=read["shown"]))
        return Subject(state.codes[read["code"]], "")
    if _UNIT.fullmatch(name) or re.fullmatch(r"j[0-9a-f]{12}", name):
        raise Unknown(message("keeping-unknown", name=name))
    sentence = (
        read["sentence"] if read["outcome"] == "mistyped" else message("keeping-no-name", name=shorten(name))
    )
    raise BadName(message("keeping-bad-name", why=sentence))


def chains(db: Database, entries: list[Entry]) -> dict[str, dict]:
    """Returns of each device the hashes of all entries from the first to the last one gathered."""
    ends: dict[str, list[int]] = {}
    for entry in entries:
        ends.setdefault(entry.device, []).append(entry.seq)
    return {
        device: {
            "first": min(seqs),
            "hashes": [
                digest
                for (digest,) in db.conn.execute(
                    "SELECT hash FROM events WHERE device = ? AND seq BETWEEN ? AND ? ORDER BY seq",
                    [device, min(seqs), max(seqs)],
                )
            ],
        }
        for device, seqs in ends.items()
    }


def proofs(db: Database, entries: list[Entry]) -> dict[str, list[dict]]:
    """Returns what proves whose the entries are; nothing of phones without a key.

    Of each phone its certificate, also of one that was put out since, whose it is, and the last signed end in
    each run of its entries that has no gap.
    """
    devices = sorted({entry.device for entry in entries})
    there = {(entry.device, entry.seq) for entry in entries}
    heads: list[dict] = []
    for device in devices:
        rows = db.conn.execute(
            "SELECT device, seq, hash, signature FROM heads WHERE device = ? ORDER BY seq", [device]
        )
        run: SignedHead | None = None
        for head in (SignedHead(*row) for row in rows):
            if (device, head.seq) not in there:
                continue
            if run and not all((device, seq) in there for seq in range(run.seq, head.seq)):
                heads.append(run._asdict())
            run = head
        if run:
            heads.append(run._asdict())
    said = [row for device in devices for row in phones.of(db, device)]
    certificates = proof.newest_certificates(db, devices, ended=True)
    found = {"certificates": certificates, "signed_heads": heads, "phones": said}
    return {name: held for name, held in found.items() if held}
