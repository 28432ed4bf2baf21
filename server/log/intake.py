"""Decides about one event that a phone sends: a pure function of the event and what is kept.

    store       the next of its device: kept
    repeat      already kept, byte for byte: harmless
    quarantine  the same identity with other bytes, or a chain that left the kept one: kept apart
    refuse      malformed, changed on the way, after a gap, or not signed: sent again once it is right
    hold        brought by another phone without proof: kept apart until a person accepts it
                (or refused, where as much is kept apart of what the sender brought as there is room for)

A fact that conflicts with another fact is none of these: it is stored, and the fold flags it.
"""

import hashlib
import re
from typing import NamedTuple

import orjson

from server.core.errors import BadInput
from server.core.facts import bounds
from server.core.facts import roles
from server.core.log import envelope
from server.core.messages import message
from server.words.spoken import Told

LARGEST_EVENT = 64 * 1024
# The phone's interpreter allows far less nesting than this one: an event that only the server
# could read would stop every phone.
DEEPEST_EVENT = 12


_ODD_TEXT = (b"\\", b"\x7f", b"null")
# A float, which the core refuses, or perhaps the like of one inside a text.
_ODD_NUMBER = re.compile(rb"[:,\[]-?[0-9]+[.eE]")


class Head(NamedTuple):
    """The end of a device's kept chain."""

    seq: int
    hash: str


NO_HEAD = Head(0, "")


class Handling(NamedTuple):
    """What to do with an event; `code` and `reason`, a message, go back to the phone when it is not kept.

    With them, where it is refused for a bound, go what is kept already and what the bound is.
    """

    action: str
    code: str = ""
    reason: object = ""
    found: str = ""
    wanted: str = ""


NOT_YOURS = Handling("refuse", "not_yours", message("server-other-phone"))
UNSIGNED = Handling("refuse", "unsigned", message("server-unsigned"))
BAD_SIGNATURE = Handling("refuse", "bad_signature", message("server-bad-signature"))
UNPROVEN = Handling("hold", "unproven", message("server-unproven"))
NO_ROOM = Handling("refuse", "no_room", message("server-no-room"))


class Malformed(Told):
    """What was sent cannot be kept as an event; the text says why."""


def read(event: dict) -> str:
    """Returns the canonical text of an event, the bytes that are hashed and kept.

    Raises Malformed; a kind that is not known here is no reason to.
    """
    text = _quickly(event)
    may_be_deep = text is None or text.count("{") + text.count("[") > DEEPEST_EVENT
    if may_be_deep and _deeper_than(event, DEEPEST_EVENT):
        raise Malformed(message("server-event-deep", most=DEEPEST_EVENT))
    try:
        envelope.check(event)
        if text is None:
            text = envelope.canonical(event)
    except BadInput as error:
        raise Malformed(error.message()) from None
    size = len(text) if text.isascii() else len(text.encode())
    if size > LARGEST_EVENT:
        raise Malformed(message("server-event-large", size=size, most=LARGEST_EVENT))
    return text


def hash_of(text: str) -> str:
    """Returns the hash of an event's canonical text."""
    return hashlib.sha256(text.encode()).hexdigest()


def _quickly(event: dict) -> str | None:
    """Returns the canonical text by a fast encoder where that writes the same; else None.

    It does for plain ASCII text without floats and large numbers, which is nearly every event; the
    rest is left to the core, which checks and writes all of it. A test holds the two side by side.
    """
    try:
        text = orjson.dumps(event, option=orjson.OPT_SORT_KEYS | orjson.OPT_STRICT_INTEGER)
    except orjson.JSONEncodeError:
        return None
    # A name of a field may have neither an escape nor the character 127. What is no number is
    # written as null.
    is_plain = text.isascii() and not any(odd in text for odd in _ODD_TEXT)
    return text.decode() if is_plain and not _ODD_NUMBER.search(text) else None


def judge(event: dict, digest: str, claimed: object, head: Head, kept: str | None) -> Handling:
    """Returns what to do with a well-formed event whose hash is `digest`.

    `head` is the end of its device's kept chain, `kept` the hash kept under its identity if any.
    """
    seq = event["seq"]
    if claimed != digest:
        return Handling("refuse", "changed", message("server-event-changed", seq=str(seq)))
    if kept == digest:
        return Handling("repeat")
    if kept is not None:
        return Handling(
            "quarantine",
            "forked",
            message("server-event-twice", seq=str(seq)),
        )
    if seq > head.seq + 1:
        return Handling(
            "refuse",
            "gap",
            message("server-events-missing", first=str(head.seq + 1), last=str(seq - 1)),
        )
    if event["prev"] != head.hash:
        return Handling(
            "quarantine",
            "forked",
            message("server-event-forked", seq=str(seq), kept=str(head.seq)),
        )
    return Handling("store")


def judge_bounds(event: dict) -> Handling | None:
    """Returns the refusal of a new event that some host could not show; None lets it in."""
    fault = bounds.outside(event)
    return Handling("refuse", "malformed", fault.message()) if fault else None


def judge_role(role: str, event: dict, target: dict | None) -> Handling | None:
    """Returns the refusal of an event that phones of a role do not record; None lets it in.

    `target` is what a correction names, as `roles.against` takes it.
    """
    why = roles.against(role, event, target)
    return Handling("refuse", "not_allowed", why) if why else None


def _deeper_than(value: object, levels: int) -> bool:
    if not isinstance(value, dict | list):
        return False
    if levels == 0:
        return True
    inner = value.values() if isinstance(value, dict) else value
    return any(_deeper_than(item, levels - 1) for item in inner)
