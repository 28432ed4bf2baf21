"""Folding of the labels that a phone without a server printed: which codes, in which batch, how often.

A batch is one order of labels. The codes of its first printing are the batch; a later printing of it
writes some of them again. A server keeps its own batches beside the log, for it prints for many phones.
"""


def batch_of(state, identity: str) -> dict | None:
    """Return a batch by its id, or None."""
    for batch in state.printed:
        if batch["id"] == identity:
            return batch
    return None


def printed_codes(state) -> dict:
    """Return every code that was printed, with the id of its batch."""
    found = {}
    for batch in state.printed:
        for code in batch["codes"]:
            found[code] = batch["id"]
    return found


def printed_for(state, code: str) -> str:
    """Return the host (and folder) that the label with this code names, or "" where none was printed."""
    for batch in state.printed:
        if code in batch["codes"]:
            return batch["host"]
    return ""


def _labels_printed(state, event, job):
    data = event["data"]
    batch = batch_of(state, data["batch"])
    if batch is None:
        batch = {"id": data["batch"], "layout": data["layout"], "codes": [], "at": event["at"], "printed": 0}
        batch["host"] = data["host"]
        state.printed.append(batch)
    for code in data["codes"]:
        if code not in batch["codes"]:
            batch["codes"].append(code)
    batch["printed"] += 1


HANDLERS = {"labels_printed": _labels_printed}
