"""A reading agrees with its figure, unless a reason is given, which the record shows."""

from ..messages import message
from ..meter import figure
from ..meter import limits
from ..parts import wires
from ..words import words
from .refusal import refusal


def refuse(fold, draft, job):
    """Ask about a figure tapped good that its limit calls bad, and the other way round."""
    data = draft["data"]
    if draft["kind"] != "circuit_measured" or data.get("override", "").strip():
        return None
    check = job.sort.circuit_check(data["check"])
    if not check:
        return None
    check = wires.on(check, job.wire_at(data["position"]))
    value, _ = figure.read(data["value"], check["unit"])
    compared, _ = figure.read(data.get("compared", ""), check["unit"])
    says = limits.judge(check, value, compared)
    if says is None or data["reads"] not in ("good", "bad") or data["reads"] == says:
        return None
    return refusal(
        "reading",
        message("rules-reading-title"),
        message(
            "rules-reading",
            value=data["value"],
            unit=figure.unit_told(data["value"], check["unit"]),
            position=words.position_name(job, data["position"]),
            says=says,
            limit=check[says],
        ),
        message("rules-reading-do", says=says),
        override=True,
    )
