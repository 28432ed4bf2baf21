"""Cautions, shown at the step that needs them; local rules and licensed practice come first."""

_SENTENCES = {
    "ground": "Level ground, parking brake on, wheels chocked.",
    "reverse": "Engine off and foot on the brake before you engage reverse.",
    "key_off": "Key off before you unplug anything.",
    "stand": "Nobody under a vehicle that stands on a jack alone.",
    "hot": "The exhaust near the bumper stays hot for a long time.",
    "airbag": "Leave airbag wiring near the bumper alone.",
    "battery": "For long work with the key on, support the battery.",
    "aid": "A parking aid is an aid. Look behind you as well.",
    "local": "Local rules and licensed practice come first.",
}

AT_STEP = {
    "cautions": ("ground", "stand", "airbag", "local"),
    "lamps.key_on": ("ground",),
    "lamps.reverse": ("reverse",),
    "test": ("reverse", "battery"),
    "pull": ("key_off", "hot", "airbag"),
    "fit": ("key_off",),
    "measure": ("key_off", "airbag", "battery"),
    "walk": ("reverse", "aid"),
    "close": ("aid",),
}


def for_step(step: str, acknowledged: dict) -> list[dict]:
    """Return [{"id", "icon", "sentence", "acknowledge", "acknowledged"}] for a step of the flow.

    Only the opening ones have to be acknowledged: there someone can get hurt before work begins.
    """
    shown = []
    for identity in AT_STEP.get(step, ()):
        shown.append(
            {
                "id": identity,
                "icon": identity,
                "sentence": _SENTENCES[identity],
                "acknowledge": step == "cautions",
                "acknowledged": identity in acknowledged,
            }
        )
    return shown


def sentence(identity: str) -> str:
    """Return a caution by its id."""
    return _SENTENCES[identity]


def to_acknowledge(acknowledged: dict) -> list[str]:
    """Return the ids of the opening cautions that nobody has acknowledged yet."""
    return [identity for identity in AT_STEP["cautions"] if identity not in acknowledged]
