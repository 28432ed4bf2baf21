"""A device's events as a hash chain: seq without a gap, each naming the hash of the one before."""

from ..messages import message
from . import envelope


def first_fault(events: list, seq: int = 0, prev: str = "") -> dict | None:
    """Return the first place where one device's `events` break the chain, or None.

    `seq` and `prev` are the last number and hash already trusted. The answer is
    {"index", "seq", "reason"}; raises BadInput where an envelope is malformed.
    """
    for index in range(len(events)):
        event = events[index]
        envelope.check(event)
        reason = None
        if event["seq"] > seq + 1:
            reason = message("refusals-chain-gap", first=str(seq + 1), last=str(event["seq"] - 1))
        elif event["seq"] <= seq:
            reason = message("refusals-chain-twice", seq=str(event["seq"]))
        elif event["prev"] != prev:
            reason = message("refusals-chain-broken", seq=str(event["seq"]))
        if reason:
            return {"index": index, "seq": event["seq"], "reason": reason}
        seq = event["seq"]
        prev = envelope.hash_of(event)
    return None
