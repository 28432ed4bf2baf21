"""Folding of the labels that a phone without a server printed: which codes, in which batch, how often.

A batch is one order of labels. The codes of its first printing are the batch; a later printing of it
writes some of them again. Those that were lost or spoiled before they were on anything go out of use for
good. A server keeps its own batches beside the log, for it prints for many phones.
"""

from ..messages import message
from ..state.printed import batch_of
from .fields import Id
from .fields import Names
from .fields import Options
from .fields import Reason
from .fields import Text
from .kind import MAY_HAVE_JOB
from .kind import Kind


def _labels_printed(state, event, job) -> None:
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


def _labels_spoiled(state, event, job) -> None:
    data = event["data"]
    batch = batch_of(state, data["batch"])
    if batch is None:
        return
    gone = batch.setdefault("void", {})
    for code in data["codes"]:
        if code in batch["codes"]:
            gone[code] = data["reason"]


KINDS = (
    Kind(
        "labels_printed",
        Id("batch"),
        Names("codes"),
        Text("host"),
        Options("layout"),
        does=_labels_printed,
        tells=lambda names, data: message("facts-labels-printed", count=len(data["codes"])),
        job=MAY_HAVE_JOB,
    ),
    Kind(
        "labels_spoiled",
        Id("batch"),
        Names("codes"),
        Reason("reason"),
        does=_labels_spoiled,
        tells=lambda names, data: message(
            "facts-labels-spoiled", count=len(data["codes"]), reason=data["reason"]
        ),
        job=MAY_HAVE_JOB,
    ),
)
