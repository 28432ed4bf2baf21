"""Figures as a meter shows them and people type them: 0,8 or 0.8, 4k7, 850 mV, OL.

Read exactly: a figure becomes a whole number of millionths of its unit, or it is said what is wrong.
"""

# What stands for it that a meter shows no figure, as nothing connects its probes.
OPEN = "open"
# The units that a figure may be typed in, by the unit of its check; OL is figure and unit at once.
_OFFERED = {"V": ("V", "mV"), "Ω": ("Ω", "kΩ", "MΩ", "OL")}
_OTHER = {"V": "Ω", "Ω": "V"}
# The most, in millionths: 60 V direct current (class A of ISO 6469-3), and what no handheld meter passes.
_MOST = {"V": 60 * 10**6, "Ω": 10**9 * 10**6}
# U+2126, the sign of the ohm, looks like the Greek letter; only texts of ASCII are compared in lower case.
_CALLED = {
    "V": ("voltios", "voltio", "volts", "volt", "v dc", "vdc", "v"),
    "Ω": ("\u2126", "Ω", "ω", "ohmios", "ohmio", "ohms", "ohm"),
}
_OPEN = ("OL", "O.L", "O.L.", "OL.", ".OL", "0L", "0.L", "0.L.", "0L.", "∞")
_DIGITS = "0123456789"
_MINUS = "-\u2212\u2013"
# Narrow and unbreakable spaces, which a keyboard or a copied text has before a unit.
_SPACES = ("\u00a0", "\u202f", "\u2009", "\t")
# Decimal places that are left to a millionth behind each prefix; R stands where the unit would.
_PLACES = {"m": 3, "R": 6, "k": 9, "K": 9, "M": 12}
_MOST_DIGITS = 12


def read(text: str, unit: str) -> tuple:
    """Return (value, problem) of a typed figure of a check measured in `unit`.

    The value is in millionths of the unit, or OPEN; None where nothing was typed, or the check has no figure.
    The problem is None, "number" (not of the form wanted), "space" (one within the digits), "minus", "open"
    (OL where a voltage is wanted), "other" (a voltage where ohms are wanted, or ohms where a voltage is) or
    "most" (more than a circuit of a vehicle has).
    """
    body = _plain(text)
    if not body or unit not in _OFFERED:
        return None, None
    if _is_of_other(body, unit):
        return None, "other"
    minus = body[0] in _MINUS
    if minus or body[0] == "+":
        body = body[1:].strip(" ")
    body = _without_unit(body, unit)
    prefix = body[-1:] if body[-1:] in _PLACES else ""
    if prefix:
        body = body[:-1].strip(" ")
    if body.upper() in _OPEN:
        return (None, "open") if unit == "V" else (OPEN, None)
    if _is_digits(body.replace(" ", "")) and " " in body:
        return None, "space"
    if not prefix:
        prefix, body = _letter_as_mark(body)
    value, problem = _millionths(body, _PLACES[prefix or "R"])
    if value is None:
        return None, problem
    if minus and value:
        return None, "minus"
    return (None, "most") if value > _MOST[unit] else (value, None)


def with_thousands(text: str, unit: str) -> tuple | None:
    """Return what else a figure like 1,000 or 1.000 can mean: its one mark may stand between thousands.

    The answer is (its value read so, in millionths; the figure without a mark; with two decimals, which
    nobody takes for thousands), the last two as texts; None for a figure that is read in one way only.
    """
    plain = _plain(text)
    marks = [n for n in range(len(plain)) if plain[n] in ",."]
    if len(marks) != 1:
        return None
    whole, part = plain[: marks[0]].strip("+ "), plain[marks[0] + 1 :]
    places = len(part) - len(part.lstrip(_DIGITS))
    if not _is_digits(whole) or len(whole) > 3 or whole[0] == "0" or places != 3:
        return None
    value, problem = read(whole + part, unit)
    if problem or value is None:
        return None
    return value, whole + part[:3], whole + plain[marks[0]] + part[:2]


def offered(unit: str) -> list[str]:
    """Return the units that a figure of a check may be typed in, its own first; none where it has none."""
    return list(_OFFERED.get(unit, (unit,))) if unit else []


def unit_told(text: str, unit: str) -> str:
    """Return the unit to be told beside a figure as it was typed; "none" where it has one or needs none."""
    has_one = [each for each in text if each not in _DIGITS + _MINUS + "+., "]
    return "none" if has_one or not unit else unit


def _plain(text: str) -> str:
    for space in _SPACES:
        text = text.replace(space, " ")
    return text.strip(" ")


def _without_unit(body: str, unit: str) -> str:
    for name in _CALLED[unit]:
        if body[-len(name) :].lower() == name or body[-len(name) :] == name:
            return body[: -len(name)].strip(" ")
    return body


def _is_of_other(body: str, unit: str) -> bool:
    """Tell whether a figure was typed in the other unit: 12 V where ohms are wanted, 47 Ω where volts are."""
    number = _without_unit(body, _OTHER[unit])
    return bool(number) and number != body and read(number, _OTHER[unit])[1] in (None, "minus", "most")


def _letter_as_mark(body: str) -> tuple:
    """Return (prefix, number) of a figure like 4k7 or R47, and what it is where it is not like that."""
    for prefix in ("k", "K", "M", "R"):
        whole, _, part = body.partition(prefix)
        if _is_digits(part) and (_is_digits(whole) or (prefix == "R" and not whole)):
            return prefix, whole + "." + part
    return "", body


def _millionths(body: str, places: int) -> tuple:
    """Return (value, None), or (None, problem), of a number with `places` decimal places to a millionth."""
    whole, _, part = body.replace(",", ".").partition(".")
    if not _is_digits(whole + part):
        return None, "number"
    whole, part = whole.lstrip("0"), part.rstrip("0")
    if len(whole) > _MOST_DIGITS:
        return None, "most"
    if len(part) > places:
        return None, "number"
    return int("0" + whole + part + "0" * (places - len(part))), None


def _is_digits(text: str) -> bool:
    return bool(text) and not [each for each in text if each not in _DIGITS]
