"""The one place where the noisy-OR is written down.

A reading shows a fault unless every present cause fails to show and there is no false alarm:
P(faulted) = 1 - (1 - false_alarm) * (1 - shows)^k.
Where the same causes were read clean just before and nothing was done since, a further clean reading is
worth `again` of one: `shows` becomes `shows * again` in it. A fault that shows counts in full.

Listening is a noisy-OR of its own, in which each cause has its own chance to silence a unit:
P(silent) = 1 - (1 - tick_false) * product of (1 - tick_c) over the causes c that are present.
What lies on a unit (`blocked`) does not silence it.
"""

SILENCES = ("unit", "circuit", "feed", "control")


def power(base, count: int, one=1.0):
    """Return base to the count as a chain of products, which both hosts round alike."""
    result = one
    for _ in range(count):
        result = result * base
    return result


def at_once(rates: dict) -> dict:
    """Return the rates of a clean reading that repeats the one before at once."""
    found = dict(rates)
    found["shows"] = rates["shows"] * rates["again"]
    return found


def ticks_on(kind: str, rates: dict) -> float:
    """Return how likely a present cause of this kind lets a unit tick that it acts on."""
    return 1.0 - rates["tick_" + kind] if kind in SILENCES else 1.0


def chances_clean(most: int, rates: dict) -> list:
    """Return P(clean) for 0, 1, ... `most` causes present."""
    clean = 1.0 - rates["false_alarm"]
    chances = []
    for _ in range(most + 1):
        chances.append(clean)
        clean = clean * (1.0 - rates["shows"])
    return chances


def chances_faulted(most: int, rates: dict) -> list:
    """Return P(faulted) for 0, 1, ... `most` causes present."""
    return [1.0 - clean for clean in chances_clean(most, rates)]
