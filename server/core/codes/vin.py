"""Vehicle identification number: its form and its check digit, explained.

Source: 49 CFR 565.15(c), Tables III to V. The digit is mandatory in North America only, so a digit
that does not fit is a remark, never a refusal.
"""

from ..messages import message

_VALUES = {
    "A": 1, "B": 2, "C": 3, "D": 4, "E": 5, "F": 6, "G": 7, "H": 8, "J": 1, "K": 2, "L": 3, "M": 4,
    "N": 5, "P": 7, "R": 9, "S": 2, "T": 3, "U": 4, "V": 5, "W": 6, "X": 7, "Y": 8, "Z": 9,
}  # fmt: skip
_WEIGHTS = (8, 7, 6, 5, 4, 3, 2, 10, 0, 9, 8, 7, 6, 5, 4, 3, 2)
LENGTH = 17


def look(vin: str) -> dict:
    """Return {"vin", "state", "sentence", "sum", "digit"} for a typed number.

    `state` is "none", "incomplete", "wrong_character", "fits" or "does_not_fit".
    """
    text = "".join([c for c in vin.upper() if c not in " -"])
    answer: dict = {"vin": text, "state": "none", "sentence": "", "sum": None, "digit": None}
    if not text:
        return answer
    for index in range(len(text)):
        if not ("0" <= text[index] <= "9" or text[index] in _VALUES):
            answer["state"] = "wrong_character"
            answer["sentence"] = message("codes-vin-character", place=str(index + 1), character=text[index])
            return answer
    if len(text) != LENGTH:
        answer["state"] = "incomplete"
        answer["sentence"] = message("codes-vin-incomplete", count=len(text), whole=LENGTH)
        return answer
    total = weighted_sum(text)
    digit = "0123456789X"[total % 11]
    answer["sum"] = total
    answer["digit"] = digit
    if text[8] == digit:
        answer["state"] = "fits"
        answer["sentence"] = message("codes-vin-fits")
    else:
        answer["state"] = "does_not_fit"
        answer["sentence"] = message("codes-vin-does-not-fit", character=text[8], digit=digit)
    return answer


def weighted_sum(vin: str) -> int:
    """Return the weighted sum of 17 characters; its remainder by 11 is the digit, 10 written X."""
    total = 0
    for index in range(LENGTH):
        character = vin[index]
        value = _VALUES[character] if character in _VALUES else int(character)
        total += value * _WEIGHTS[index]
    return total
