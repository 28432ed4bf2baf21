"""The envelope every fact travels in: its fields, their checks and its hash.

Identity is (device, seq); `prev` chains a device's events, so that a gap or a changed byte shows.
"""

from ..errors import BadInput
from ..messages import message
from . import canon
from . import ids

FORMAT_VERSION = 1
# The oldest format in which a job may still be begun; an app of an older one only sends what it holds.
OLDEST_TO_BEGIN = 1
FIELDS = ("device", "seq", "prev", "v", "at", "actor", "job", "kind", "data")
# The first time that is later than every host shows: CPython's dates end with the year 9999, by any zone.
TOO_LATE = 253370764800000  # 1 January 9999, UTC
_HEX = "0123456789abcdef"


def check(event) -> None:
    """Raise BadInput unless `event` is a well-formed envelope.

    The kind may be unknown, and a newer format may have further fields: both are kept as they are.
    """
    if not isinstance(event, dict):
        raise BadInput("event", event, message("refusals-object"))
    try:
        device, seq, prev, version = event["device"], event["seq"], event["prev"], event["v"]
        at, actor, job, kind = event["at"], event["actor"], event["job"], event["kind"]
        data = event["data"]
    except KeyError:
        missing = [field for field in FIELDS if field not in event]
        raise BadInput("event." + missing[0], None, message("refusals-field-there"))
    # "d" is a hex digit too. No part is cut out: each text that is made costs a look-up on the phone.
    if not isinstance(device, str) or len(device) != 17 or not device.startswith("d") or device.strip(_HEX):
        raise BadInput("event.device", device, message("refusals-device"))
    if type(seq) is not int or seq < 1:
        raise BadInput("event.seq", seq, message("refusals-whole-from", least=1))
    if seq == 1:
        if prev != "":
            raise BadInput("event.prev", prev, message("refusals-first-prev"))
    elif not isinstance(prev, str) or len(prev) != 64 or prev.strip(_HEX):
        raise BadInput("event.prev", prev, message("refusals-prev"))
    if type(version) is not int or version < 1:
        raise BadInput("event.v", version, message("refusals-whole-from", least=1))
    if len(event) > len(FIELDS) and not is_newer(event):
        for field in sorted(event):
            if field not in FIELDS:
                raise BadInput("event." + field, event[field], message("refusals-no-such-field"))
    if type(at) is not int or at < 0:
        raise BadInput("event.at", at, message("refusals-whole-from", least=0))
    if not isinstance(actor, str) or len(actor) > 80:
        raise BadInput("event.actor", actor, message("refusals-text", least=0, most=80))
    if job is not None and (not isinstance(job, str) or not 1 <= len(job) <= 40):
        raise BadInput("event.job", job, message("refusals-text", least=1, most=40))
    if not isinstance(kind, str) or not 1 <= len(kind) <= 40:
        raise BadInput("event.kind", kind, message("refusals-text", least=1, most=40))
    if not isinstance(data, dict):
        raise BadInput("event.data", data, message("refusals-object"))


def bound(event: dict) -> None:
    """Raise BadInput where a well-formed envelope is outside what every host can show.

    Asked of what comes in; what was kept before is folded without it.
    """
    if event["at"] >= TOO_LATE:
        raise BadInput("event.at", event["at"], message("refusals-time"))
    if event["job"] is not None:
        ids.bound("event.job", event["job"])
    ids.bound("event.kind", event["kind"])


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
