"""Folding of the labels that a phone without a server printed: which codes, in which batch, how often.

A batch is one order of labels. The codes of its first printing are the batch; a later printing of it
writes some of them again. A server keeps its own batches beside the log, for it prints for many phones.
"""

from ..state.printed import batch_of


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
