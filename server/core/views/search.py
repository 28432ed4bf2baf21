"""How a text finds what is on record: both are folded to words, and each word asked for has to begin one.

Folded means small letters without accents, signs as gaps: `Škoda`, `SKODA` and `skoda` are one word, `ß` is
`ss`. Plates, numbers and codes are written with and without gaps and hyphens, so they have a word more: all
their parts in one. A long number is found by its end too, as it is read off a windscreen. Where nothing has
exactly what was typed, `nearly.py` says what comes close.

What is found by which words is a pair of texts first: all of it, and its numbers apart from each other. Many
pairs are folded in one go, for MicroPython does one long text much faster than many short ones.
"""

from ..codes import labels
from ..messages import message
from ..state.serials import serials_of
from . import nearly
from .folding import folded

LONG = 10  # characters of a number that is found by its end
_ENDS = (8, 7, 6, 5, 4)
_MOST_REASONS = 2
_NEXT, _BETWEEN = "\n", "\t"  # what no word holds: the end of a pair, and of a number


def raw(texts: list[str], numbers: list[str]) -> tuple[str, str]:
    """Return the pair of what is found by `texts` and by `numbers`, however those are parted."""
    ends = []
    for number in numbers:
        if len(number) >= LONG:
            in_one = number.replace(" ", "").replace("-", "")
            ends.extend([in_one[-length:] for length in _ENDS])
    return " ".join(texts + numbers), _BETWEEN.join(numbers + ends)


def fold_all(pairs: list[tuple[str, str]]) -> list[str]:
    """Return the words of each pair as one text, a gap before each word."""
    texts = _NEXT.join([text.replace(_NEXT, " ") for text, _ in pairs])
    numbers = _NEXT.join([numbers.replace(_NEXT, " ") for _, numbers in pairs])
    words = folded(texts, " ", keep=_NEXT).split(_NEXT)
    wholes = folded(numbers, "", keep=_NEXT + _BETWEEN).replace(_BETWEEN, " ").split(_NEXT)
    return [" " + words[n] + " " + wholes[n] for n in range(len(pairs))]


def tokens(text: str) -> list[str]:
    """Return the words of a text, folded."""
    return folded(text, " ").split()


def words_of(texts: list[str], numbers: list[str]) -> str:
    """Return the words of one pair, "" where there are none."""
    words = fold_all([raw(texts, numbers)])[0]
    return words if words.strip() else ""


class Asked:
    """A text that somebody searches for."""

    def __init__(self, text: str):
        """Take the text apart at its gaps; a piece is found by its parts, or by all of them in one."""
        pieces = [tokens(piece) for piece in text.split()]
        self.pieces = [parts for parts in pieces if parts]
        self.whole = "".join(["".join(parts) for parts in self.pieces])

    def is_empty(self) -> bool:
        """Tell whether there is nothing to search for."""
        return not self.pieces

    def among(self, words: dict) -> list[str]:
        """Return the keys of those words that have all that is asked for."""
        left = list(words)
        for parts in self.pieces:
            found = _with_all(words, left, parts)
            if len(parts) > 1:
                found = _either(found, _with_all(words, left, ["".join(parts)]))
            left = found
        if len(self.pieces) > 1:
            left = _either(left, _with_all(words, list(words), [self.whole]))
        return left

    def nearly_among(self, words: dict) -> list[str]:
        """Return the keys of those words that have all that is asked for, but for a slip in each piece."""
        left = list(words)
        for parts in self.pieces:
            found = left
            for part in parts:
                found = _perhaps_with(words, found, part)
            if len(parts) > 1:
                found = _either(found, _perhaps_with(words, left, "".join(parts)))
            left = found
        if len(self.pieces) > 1:
            left = _either(left, _perhaps_with(words, list(words), self.whole))
        return [name for name in left if self.is_near(words[name])]

    def is_near(self, words: str) -> bool:
        """Tell whether all that is asked for is in a text of `fold_all`, but for a slip in each piece."""
        if not [
            parts for parts in self.pieces if not (_piece_in(words, parts) or _piece_nearly_in(words, parts))
        ]:
            return True
        return len(self.pieces) > 1 and nearly.is_in(words, self.whole)

    def touches(self, words: str, near: bool = False) -> bool:
        """Tell whether a part of what is asked for is in a text of `fold_all`, or comes `near` one."""
        if " " + self.whole in words or (near and nearly.is_in(words, self.whole)):
            return True
        return bool(
            [
                parts
                for parts in self.pieces
                if _piece_in(words, parts) or (near and _piece_nearly_in(words, parts))
            ]
        )


# Thousands of texts are looked through with every letter: one comprehension for all of them, for MicroPython
# calls a function for each of them many times as long.


def _with_all(words: dict, names: list[str], parts: list[str]) -> list[str]:
    """Return those names whose words have a beginning of each part."""
    for part in parts:
        begins = " " + part
        names = [name for name in names if begins in words[name]]
    return names


def _perhaps_with(words: dict, names: list[str], part: str) -> list[str]:
    """Return those names whose words may have a part or what comes close to it, and maybe a few more."""
    begins = " " + part
    if len(part) < nearly.SHORTEST:
        return [name for name in names if begins in words[name]]
    first, second, swapped = nearly.halves(part)
    first, swapped = " " + first, " " + swapped
    quarter = len(second) // 2
    # Vehicles of one model have the first half of a long number alike: of the second, a half is there too.
    longer, last = first + second[: max(0, quarter - 1)], second[quarter:]
    return [
        name
        for name in names
        if longer in words[name]
        or second in words[name]
        or (first in words[name] and last in words[name])
        or swapped in words[name]
    ]


def _either(names: list[str], more: list[str]) -> list[str]:
    """Return the names of both lists, each once."""
    if not more:
        return names
    have = {name: True for name in names}
    return names + [name for name in more if name not in have]


def _piece_in(words: str, parts: list[str]) -> bool:
    if " " + "".join(parts) in words:
        return True
    return not [part for part in parts if " " + part not in words]


def _piece_nearly_in(words: str, parts: list[str]) -> bool:
    if nearly.is_in(words, "".join(parts)):
        return True
    if len(parts) == 1:
        return False
    return not [part for part in parts if " " + part not in words and not nearly.is_in(words, part)]


def reasons(asked: Asked, facts: list[tuple[str, str]], near: bool) -> list[dict]:
    """Return the first few of (sort, text) by which something was found, as messages."""
    said, seen = [], {}
    facts = [fact for fact in facts if fact[1]]
    words = fold_all([raw([], [what]) for _, what in facts])
    for at in range(len(facts)):
        if facts[at] not in seen and asked.touches(words[at], near):
            seen[facts[at]] = True
            said.append(message("views-list-found", sort=facts[at][0], what=facts[at][1]))
            if len(said) == _MOST_REASONS:
                break
    return said


def numbers_of_unit(unit: dict) -> list[str]:
    """Return what a unit is told from others by: the codes of its labels and its serial numbers."""
    # Most units of a long log have none: it is their first answer that counts.
    if not (unit["code"] or unit["serial"] or unit["returns"] or unit["old_codes"]):
        return []
    return codes_of_unit(unit) + serials_of(unit)


def codes_of_unit(unit: dict) -> list[str]:
    """Return the codes of all labels that a unit had, as people read them."""
    codes = [unit["code"]] + unit["also"] + unit["old_codes"] + [entry["code"] for entry in unit["returns"]]
    said = [labels.shown(code.partition("@")[0]) for code in codes if code]
    return said + [code for code in codes if "@" in code]


def of_unit(unit: dict) -> tuple[list[str], list[str]]:
    """Return the texts and the numbers that a unit is found by, apart from its jobs."""
    said = []
    for entry in unit["returns"]:
        said.extend([entry["actor"], entry["note"]])
        for made in entry["decisions"]:
            said.extend([made["signed"], made["overrule"]])
    for move in unit["moves"]:
        said.append(move["actor"])
    numbers = [unit["part"]] + codes_of_unit(unit) + serials_of(unit)
    numbers.extend([entry["part"] for entry in unit["returns"]])
    return [text for text in said if text], [text for text in numbers if text]


def of_job(vehicle: dict, line: dict) -> tuple[list[str], list[str]]:
    """Return the texts and the numbers that a job and its units are found by: vehicle, complaint, part."""
    texts, numbers = of_vehicle(vehicle)
    if line["complaint"]:
        texts.append(line["complaint"])
    if line["part"]:
        numbers.append(line["part"])
    return texts, numbers


def of_vehicle(vehicle: dict) -> tuple[list[str], list[str]]:
    """Return the texts and the numbers that a vehicle is found by."""
    numbers = [text for text in (vehicle.get("plate", ""), vehicle["vin"]) if text]
    return [vehicle["name"]], numbers
