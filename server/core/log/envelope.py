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
    device = event["device"]
    if not isinstance(device, str) or device[:1] != "d" or not _is_hex(device[1:], 16):
        raise BadInput("event.device", device, '"d" and 16 hex digits')
    _whole("event.seq", event["seq"], 1)
    if event["seq"] == 1:
        if event["prev"] != "":
            raise BadInput("event.prev", event["prev"], '"" for the first event of a device')
    elif not _is_hex(event["prev"], 64):
        raise BadInput("event.prev", event["prev"], "64 hex digits, the hash of the event before")
    _whole("event.v", event["v"], 1)
    if len(event) > len(FIELDS) and not is_newer(event):
        for field in sorted(event):
            if field not in FIELDS:
                raise BadInput("event." + field, event[field], "no field of this name")
    _whole("event.at", event["at"], 0)
    _text("event.actor", event["actor"], 0, 80)
    if event["job"] is not None:
        _text("event.job", event["job"], 1, 40)
    _text("event.kind", event["kind"], 1, 40)
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


def _is_hex(text, length: int) -> bool:
    return isinstance(text, str) and len(text) == length and not text.strip(_HEX)


def _whole(field: str, value, least: int) -> None:
    if isinstance(value, bool) or not isinstance(value, int) or value < least:
        raise BadInput(field, value, "a whole number from {}".format(least))


def _text(field: str, value, least: int, most: int) -> None:
    if not isinstance(value, str) or not least <= len(value) <= most:
        raise BadInput(field, value, "text of {} to {} characters".format(least, most))
