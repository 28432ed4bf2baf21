"""What a record says, read strictly: whoever sealed it may have written anything into it."""

import json
from collections import namedtuple

from ..codes import labels
from ..errors import BadInput
from ..facts.roles import ROLES
from ..log import canon
from ..log import envelope
from .file import APP
from .file import PHONE_APP
from .said import is_said
from .signed import are_sound

_FIELDS = ("app", "v", "unit", "job", "code", "jobs", "made_at", "installation", "key", "core", "format",
           "elsewhere", "missing", "told")  # fmt: skip
_ELSEWHERE = ("unit", "code", "part", "serial", "place")
_PHONE = ("device", "from", "role", "name", "people")
_TOLD_OF_JOB = ("sentence", "probability", "clear", "causes")
_IN_TEXT = 1  # the version whose sentences are text, and that names no causes
_HEX = "0123456789abcdef"


class NotOfTheForm(Exception):
    """A part of a record is not written as a record is."""


class Hashes(namedtuple("Hashes", ("order", "devices", "smaller", "certificates", "signed_heads", "phones"))):
    """The order of the entries, of each device its first number here and its hashes from there, and what
    proves whose they are.

    `phones` is what is said of phones (`facts.whose`), nothing in older records.
    `smaller` gives of a photo that is in the file as a smaller version the hash of that version.
    """

    def of(self, device: str, seq: int) -> str | None:
        """Return the hash of an entry, in here or not; None where the list does not reach."""
        first, hashes = self.devices.get(device, (0, []))
        return hashes[seq - first] if 0 <= seq - first < len(hashes) else None


def plain(text: str) -> dict:
    """Return a JSON object that is written canonically; raise NotOfTheForm."""
    try:
        value = json.loads(text)
        sound = isinstance(value, dict) and canon.dumps(value) == text
    except (ValueError, RuntimeError, BadInput):
        sound = False
    if not sound:
        raise NotOfTheForm
    return value


def check_record(record: dict) -> None:
    """Raise NotOfTheForm unless `record.json` has the form that the rest of the program relies on."""
    try:
        sound = (
            _exactly(record, _FIELDS)
            and _is_key(record["app"], record["key"])
            and _texts([record[name] for name in ("unit", "job", "code", "installation")])
            and bool(record["unit"]) != bool(record["job"])
            and (not record["code"] or labels.may_be_issued(record["code"]))
            and _list_of_texts(record["jobs"])
            and is_hash(record["core"])
            and all([isinstance(record[name], int) for name in ("made_at", "format")])
            and isinstance(record["missing"], list)
            and all([is_hash(digest) for digest in record["missing"]])
            and isinstance(record["elsewhere"], list)
            and all([_exactly(unit, _ELSEWHERE) and _texts(unit.values()) for unit in record["elsewhere"]])
            and _told(record["told"], record["v"] == _IN_TEXT)
        )
    except (TypeError, AttributeError, KeyError):
        sound = False
    if not sound:
        raise NotOfTheForm


def read_hashes(text: str) -> Hashes:
    """Return what `hashes.json` says; raise NotOfTheForm."""
    value = plain(text)
    try:
        order = [(device, seq) for device, seq in value["order"]]
        devices = {}
        for device in value["devices"]:
            told = value["devices"][device]
            devices[device] = (told["first"], told["hashes"])
        sound = all([isinstance(device, str) and isinstance(seq, int) for device, seq in order])
        for device in devices:
            first, hashes = devices[device]
            sound = sound and isinstance(first, int) and first > 0 and isinstance(hashes, list)
            sound = sound and all([is_hash(digest) for digest in hashes])
        smaller = value.get("smaller", {})
        sound = sound and isinstance(smaller, dict)
        sound = sound and all([is_hash(digest) and is_hash(smaller[digest]) for digest in smaller])
        certificates, heads = value.get("certificates", []), value.get("signed_heads", [])
        phones = value.get("phones", [])
        sound = sound and are_sound(certificates, heads) and all([_exactly(each, _PHONE) for each in phones])
        sound = sound and all([_is_phone(each) for each in phones])
    except (TypeError, ValueError, KeyError, AttributeError):
        sound = False
    if not sound:
        raise NotOfTheForm
    return Hashes(order, devices, smaller, certificates, heads, phones)


def identity(line: str) -> tuple | None:
    """Return which entry a line claims to be, (device, seq), or None where it is none."""
    try:
        event = json.loads(line)
        envelope.check(event)
    except (ValueError, RuntimeError, BadInput):
        return None
    return event["device"], event["seq"]


def is_hash(text) -> bool:
    """Tell whether a value is a SHA-256 as we write it."""
    return isinstance(text, str) and len(text) == 64 and not text.strip(_HEX)


def _is_key(app: str, key) -> bool:
    """Tell whether this is a public key of an installation (Ed25519), or of a phone (a point of P-256)."""
    if app == APP:
        return is_hash(key)
    return app == PHONE_APP and isinstance(key, str) and len(key) == 130 and key[:2] == "04" and (
        not key.strip(_HEX)
    )  # fmt: skip


def _is_phone(said: dict) -> bool:
    """Tell whether this says of a phone what `facts.whose` takes."""
    texts = _texts([said["device"], said["name"]]) and _list_of_texts(said["people"])
    return texts and said["role"] in ROLES and isinstance(said["from"], int)


def _exactly(value: dict, names: tuple) -> bool:
    return isinstance(value, dict) and sorted(value) == sorted(names)


def _texts(values) -> bool:
    return all([isinstance(value, str) for value in values])


def _list_of_texts(values) -> bool:
    return isinstance(values, list) and _texts(values)


def _told(told: dict, in_text: bool) -> bool:
    if not _exactly(told, ("unit", "jobs")) or not (told["unit"] is None or isinstance(told["unit"], dict)):
        return False
    for name in told["jobs"]:
        job = told["jobs"][name]
        if not _exactly(job, _TOLD_OF_JOB[:-1] if in_text else _TOLD_OF_JOB):
            return False
        if not (isinstance(job["sentence"], str) or (not in_text and is_said(job["sentence"]))):
            return False
        if not in_text and not _list_of_texts(job["causes"]):
            return False
        for figure in ("probability", "clear"):
            if job[figure] is not None and not isinstance(job[figure], int):
                return False
    return isinstance(told["jobs"], dict)
