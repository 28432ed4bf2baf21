"""What a record says, read strictly: whoever sealed it may have written anything into it."""

import json
import re
from typing import NamedTuple

from server.core import canon
from server.core import envelope
from server.core import labels
from server.core.errors import BadInput
from server.core.record_file import APP
from server.core.record_file import PHONE_APP

_HASH = re.compile(r"[0-9a-f]{64}")
# By who made it: the public key of an installation (Ed25519), or of a phone (a point of P-256).
_KEYS = {APP: _HASH, PHONE_APP: re.compile(r"04[0-9a-f]{128}")}
_FIELDS = {
    "app", "v", "unit", "job", "code", "jobs", "made_at", "installation", "key", "core", "format",
    "elsewhere", "missing", "told",
}  # fmt: skip
_ELSEWHERE = {"unit", "code", "part", "serial", "place"}
_TOLD_OF_JOB = {"sentence", "probability", "clear"}


class NotOfTheForm(Exception):
    """A part of a record is not written as a record is."""


class Hashes(NamedTuple):
    """The order of the entries, and of each device its first number here and its hashes from there."""

    order: list[tuple[str, int]]
    devices: dict[str, tuple[int, list[str]]]

    def of(self, device: str, seq: int) -> str | None:
        """Returns the hash of an entry, in here or not; None where the list does not reach."""
        first, hashes = self.devices.get(device, (0, []))
        return hashes[seq - first] if 0 <= seq - first < len(hashes) else None


def plain(text: str) -> dict:
    """Returns a JSON object that is written canonically."""
    try:
        value = json.loads(text)
        if not isinstance(value, dict) or canon.dumps(value) != text:
            raise NotOfTheForm
    except (ValueError, RecursionError, BadInput):
        raise NotOfTheForm from None
    return value


def check_record(record: dict) -> None:
    """Raises NotOfTheForm unless `record.json` has the form that the rest of the program relies on."""
    try:
        sound = (
            set(record) == _FIELDS
            and record["app"] in _KEYS
            and bool(_KEYS[record["app"]].fullmatch(record["key"]))
            and _texts([record[name] for name in ("unit", "job", "code", "installation")])
            and bool(record["unit"]) != bool(record["job"])
            and (not record["code"] or labels.may_be_issued(record["code"]))
            and _texts(record["jobs"])
            and bool(_HASH.fullmatch(record["core"]))
            and all(isinstance(record[name], int) for name in ("made_at", "format"))
            and all(_HASH.fullmatch(digest) for digest in record["missing"])
            and all(set(unit) == _ELSEWHERE and _texts(unit.values()) for unit in record["elsewhere"])
            and _told(record["told"])
        )
    except (TypeError, AttributeError, KeyError):
        sound = False
    if not sound:
        raise NotOfTheForm


def read_hashes(text: str) -> Hashes:
    """Returns what `hashes.json` says; raises NotOfTheForm."""
    value = plain(text)
    try:
        order = [(device, seq) for device, seq in value["order"]]
        devices = {device: (told["first"], told["hashes"]) for device, told in value["devices"].items()}
        sound = (
            all(isinstance(device, str) and isinstance(seq, int) for device, seq in order)
            and all(isinstance(first, int) and first > 0 for first, _ in devices.values())
            and all(_HASH.fullmatch(digest) for _, hashes in devices.values() for digest in hashes)
        )
    except (TypeError, ValueError, KeyError, AttributeError):
        sound = False
    if not sound:
        raise NotOfTheForm
    return Hashes(order, devices)


def identity(line: str) -> tuple[str, int] | None:
    """Returns which entry a line claims to be, or None where it is none."""
    try:
        event = json.loads(line)
        envelope.check(event)
    except (ValueError, RecursionError, BadInput):
        return None
    return event["device"], event["seq"]


def _texts(values: object) -> bool:
    return all(isinstance(value, str) for value in values)  # type: ignore[attr-defined]


def _told(told: dict) -> bool:
    unit, jobs = told["unit"], told["jobs"]
    return (
        set(told) == {"unit", "jobs"}
        and (unit is None or isinstance(unit, dict))
        and all(set(job) == _TOLD_OF_JOB and isinstance(job["sentence"], str) for job in jobs.values())
        and all(
            job[name] is None or isinstance(job[name], int)
            for job in jobs.values()
            for name in ("probability", "clear")
        )
    )
