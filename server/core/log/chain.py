"""A device's events as a hash chain: seq without a gap, each naming the hash of the one before."""

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
            reason = "events {} to {} are missing".format(seq + 1, event["seq"] - 1)
        elif event["seq"] <= seq:
            reason = "event {} comes a second time".format(event["seq"])
        elif event["prev"] != prev:
            reason = "event {} does not continue the event before it".format(event["seq"])
        if reason:
            return {"index": index, "seq": event["seq"], "reason": reason}
        seq = event["seq"]
        prev = envelope.hash_of(event)
    return None
