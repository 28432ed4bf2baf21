"""The entries of a record, held against the list of hashes: which was changed, added, left out, moved."""

import json

from ..errors import BadInput
from ..log import canon
from ..log import envelope
from ..messages import message
from .altered import Altered
from .altered import altered
from .file import ENTRIES
from .form import identity

_DEEPEST_EVENT = 12  # as a server takes it in


def read_event(event: dict) -> str:
    """Return the canonical text of an event that a server would take in; raise BadInput."""
    if _deeper_than(event, _DEEPEST_EVENT):
        raise BadInput("event", "", message("record-levels", most=_DEEPEST_EVENT))
    envelope.check(event)
    return envelope.canonical(event)


def events_as_hashed(text: str, digest: str, sealed: str | None, hashes, read) -> list:
    """Return the events of a record, each as it was hashed; raise Altered with the first that is not.

    `text` are their lines, with `digest`; `sealed` is the digest in the seal. `read` is as in `check.check`.
    """
    lines = text.split("\n")
    order = hashes.order
    for index in range(len(order)):
        line = lines[index] if index < len(lines) - 1 else ""
        if canon.sha256_hex(line) != hashes.of(order[index][0], order[index][1]):
            raise _what_happened(index, lines[:-1], hashes)
    if len(lines) - 1 > len(order):
        added = identity(lines[len(order)])
        if added:
            raise Altered(added[0], added[1], message("record-added"))
        raise altered("record-entry-added")
    if digest != sealed:
        raise altered("record-changed-end", file=ENTRIES)
    _in_order(order)
    return [_event(lines[index], order[index], hashes, read) for index in range(len(order))]


def _in_order(order: list) -> None:
    """Refuse an entry that stands twice, or before an earlier one of its phone: it would count otherwise."""
    last = {}
    for device, seq in order:
        if seq <= last.get(device, 0):
            raise Altered(device, seq, message("record-not-next"))
        last[device] = seq


def _what_happened(index: int, lines: list, hashes) -> Altered:
    """Tell why the line at `index` is not the entry that stood there."""
    device, seq = hashes.order[index]
    found = identity(lines[index]) if index < len(lines) else None
    if found is not None and found != (device, seq):
        if found not in hashes.order:
            return Altered(found[0], found[1], message("record-added"))
        if len(lines) >= len(hashes.order):
            return Altered(device, seq, message("record-another"))
    if index >= len(lines) or (found != (device, seq) and len(lines) < len(hashes.order)):
        return Altered(device, seq, message("record-missing"))
    return Altered(device, seq, message("record-bytes"))


def _event(line: str, place: tuple, hashes, read) -> dict:
    """Return an entry that is as it was hashed; refuse one that no server would have taken in."""
    device, seq = place
    try:
        event = json.loads(line)
        text = read(event)
    except (ValueError, RuntimeError, BadInput):
        raise Altered(device, seq, message("record-no-entry"))
    if text != line or (event["device"], event["seq"]) != place:
        raise Altered(device, seq, message("record-no-entry"))
    before = hashes.of(device, seq - 1)
    if before is not None and event["prev"] != before:
        raise Altered(device, seq, message("record-not-next"))
    return event


def _deeper_than(value, levels: int) -> bool:
    if isinstance(value, dict):
        inside = [value[key] for key in value]
    elif isinstance(value, list):
        inside = value
    else:
        return False
    if levels == 0:
        return True
    for item in inside:
        if _deeper_than(item, levels - 1):
            return True
    return False
