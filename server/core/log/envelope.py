"""The envelope every fact travels in: its fields, their checks and its hash.

Identity is (device, seq); `prev` chains a device's events, so that a gap or a changed byte shows.
"""

from ..errors import BadInput
from . import canon

FORMAT_VERSION = 1
# The oldest format in which a job may still be begun; an app of an older one only sends what it holds.
OLDEST_TO_BEGIN = 1
FIELDS = ("device", "seq", "prev", "v", "at", "actor", "job", "kind", "data")
_HEX = "0123456789abcdef"


def check(event) -> None:
    """Raise BadInput unless `event` is a well-formed envelope.

    The kind may be unknown, and a newer format may have further fields: both are kept as they are.
    """
    if not isinstance(event, dict):
        raise BadInput("event", event, "an object")
    for field in FIELDS:
        if field not in event:
            raise BadInput("event." + field, None, "the field to be there")
    device, seq, prev = event["device"], event["seq"], event["prev"]
    if not isinstance(device, str) or len(device) != 17 or device[0] != "d" or device[1:].strip(_HEX):
        raise BadInput("event.device", device, '"d" and 16 hex digits')
    if type(seq) is not int or seq < 1:
        raise BadInput("event.seq", seq, "a whole number from 1")
    if seq == 1:
        if prev != "":
            raise BadInput("event.prev", prev, '"" for the first event of a device')
    elif not isinstance(prev, str) or len(prev) != 64 or prev.strip(_HEX):
        raise BadInput("event.prev", prev, "64 hex digits, the hash of the event before")
    if type(event["v"]) is not int or event["v"] < 1:
        raise BadInput("event.v", event["v"], "a whole number from 1")
    if len(event) > len(FIELDS) and not is_newer(event):
        for field in sorted(event):
            if field not in FIELDS:
                raise BadInput("event." + field, event[field], "no field of this name")
    if type(event["at"]) is not int or event["at"] < 0:
        raise BadInput("event.at", event["at"], "a whole number from 0")
    if not isinstance(event["actor"], str) or len(event["actor"]) > 80:
        raise BadInput("event.actor", event["actor"], "text of 0 to 80 characters")
    for field in ("job", "kind"):
        text = event[field]
        if not isinstance(text, str) or not 1 <= len(text) <= 40:
            if text is not None or field == "kind":
                raise BadInput("event." + field, text, "text of 1 to 40 characters")
    if not isinstance(event["data"], dict):
        raise BadInput("event.data", event["data"], "an object")


def is_newer(event: dict) -> bool:
    """Tell whether a later version of the app recorded this, in a format not known here."""
    return event["v"] > FORMAT_VERSION


def canonical(event: dict) -> str:
    """Return the canonical JSON of the envelope, the exact bytes that are hashed and kept."""
    return canon.dumps(event)


def hash_of(event: dict) -> str:
    """Return the SHA-256 of the canonical envelope as 64 hex digits."""
    return canon.sha256_hex(canonical(event))


def identity(event: dict) -> str:
    """Return `device:seq` as one text, the name by which other facts refer to this event."""
    return "{}:{}".format(event["device"], event["seq"])
