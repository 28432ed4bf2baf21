"""Cautions, shown at the step that needs them; local rules and licensed practice come first."""

from .sort import Sort


def for_step(sort: Sort, step: str, acknowledged: dict) -> list[dict]:
    """Return [{"id", "icon", "sentence", "short", "acknowledge", "acknowledged"}] for a step of the flow.

    What a step of several parts has no cautions for, has those of its last part that has any:
    "wiring.measure" and "measure.again" those of "measure", as every other step at the wiring has. Only the
    opening ones have to be acknowledged: there someone can get hurt before work begins.
    """
    parts = step.split(".")
    wiring = ["measure"] if parts[0] == "wiring" else []
    known = [part for part in [step] + list(reversed(parts)) + wiring if part in sort.at_step]
    step = known[0] if known else step
    shown = []
    for identity in sort.at_step.get(step, ()):
        caution = sort.cautions[identity]
        shown.append(
            {
                "id": identity,
                "icon": caution.icon,
                "sentence": caution.sentence,
                "short": caution.short,
                "acknowledge": step == "cautions",
                "acknowledged": identity in acknowledged,
            }
        )
    return shown


def to_acknowledge(sort: Sort, acknowledged: dict) -> list[str]:
    """Return the ids of the opening cautions that nobody has acknowledged yet."""
    return [identity for identity in sort.at_step["cautions"] if identity not in acknowledged]
