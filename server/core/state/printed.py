"""What a phone without a server printed: its batches of labels, and whose a printed code is."""


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


def is_spoiled(state, code: str) -> bool:
    """Tell whether a printed label went out of use before anything carried it."""
    return bool([batch for batch in state.printed if code in batch.get("void", {})])


def printed_for(state, code: str) -> str:
    """Return the host (and folder) that the label with this code names, or "" where none was printed."""
    for batch in state.printed:
        if code in batch["codes"]:
            return batch["host"]
    return ""
