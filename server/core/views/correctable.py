"""What of which entries can be entered anew: each history asks, the form itself few.

The form is `correcting`, which a phone can start without.
"""

# By kind: the fields that can be entered anew, in the order in which they are asked for.
FIELDS = {
    "job_opened": ("complaint", "vehicle.name", "vehicle.plate", "vehicle.vin", "vehicle.model", "part"),
    "job_handed_over": ("to", "note"),
    "job_paused": ("why", "part", "note"),
    "job_closed": ("why", "note"),
    "lamp_checked": ("result", "note"),
    "looked": ("note",),
    "walk_checked": ("missed",),
    "listened": ("ticks", "silent"),
    "test_run": ("faulted", "silent", "heard", "note"),
    "cleaned": ("position", "note"),
    "connector_locked": ("position",),
    "fit_checked": ("unit", "position"),
    "sounder_checked": ("check", "found"),
    "photo_taken": ("position",),
    "circuit_measured": ("position", "reads", "value", "compared"),
    "circuit_repaired": ("cause", "segment", "what"),
    "wire_noted": (
        "position",
        "colour",
        "signal_colour",
        "supply_colour",
        "ground_colour",
        "pins",
    ),
    "wires_marked": ("position", "signal_colour", "supply_colour", "ground_colour", "pins"),
    "unit_labelled": ("code",),
    "part_noted": ("part", "serial"),
    "unit_added": ("part", "serial", "code"),
    "label_voided": ("reason",),
    "unit_pulled": ("unit", "position"),
    "unit_fitted": ("unit", "position"),
    "left_deliberately": ("unit", "position"),
    "unit_moved": ("unit", "place"),
    "unit_seen": ("unit",),
    "units_mixed": ("units", "note"),
}


def may_be_put_right(entry: dict) -> bool:
    """Tell whether an entry of the history can be entered anew."""
    return entry["understood"] and entry["withdrawn"] is None and entry["kind"] in FIELDS


def known_corrections(entry: dict) -> list[str]:
    """Return the correction of an entry of a history that stands: who corrects it now knows of that one."""
    return [entry["righted"]["by"]] if "righted" in entry else []
