"""Words that come close to what was typed: one character wrong, missing, too many, or two of them swapped.

It is asked only where nothing has exactly what was typed. Most words are passed over by looking for a half
of it: whatever the one slip is, the other half is there as typed, unless the two in the middle are swapped.
"""

SHORTEST = 4  # characters that are typed; fewer come close to too much


def beginning(word: str, typed: str) -> str:
    """Return the beginning of a word that differs from what was typed by one slip at most, "" without one."""
    if len(typed) < SHORTEST:
        return ""
    same = 0
    while same < len(typed) and same < len(word) and word[same] == typed[same]:
        same += 1
    if same == len(typed):
        return typed
    after = typed[same + 1 :]
    if len(word) > same:
        if word[same + 1 :].startswith(after):  # one is wrong
            return word[: len(typed)]
        if word[same + 1 :].startswith(typed[same:]):  # one is missing
            return word[: len(typed) + 1]
        if word[same : same + 2] == typed[same + 1 : same + 2] + typed[same] and word[same + 2 :].startswith(
            typed[same + 2 :]
        ):
            return word[: len(typed)]
    if len(typed) > SHORTEST and word[same:].startswith(after):  # one is too many
        return word[: len(typed) - 1]
    return ""


def halves(typed: str) -> tuple[str, str, str]:
    """Return (first half, second half, all of it with the two in the middle swapped)."""
    half = len(typed) // 2
    return typed[:half], typed[half:], typed[: half - 1] + typed[half] + typed[half - 1] + typed[half + 1 :]


def is_in(words: str, typed: str) -> bool:
    """Tell whether a word of a text, a gap before each, begins with nearly what was typed."""
    if len(typed) < SHORTEST:
        return False
    first, second, swapped = halves(typed)
    if " " + swapped in words:
        return True
    at = words.find(" " + first)
    while at >= 0:
        if _begins(words, at + 1, typed):
            return True
        at = words.find(" " + first, at + 1)
    half = len(first)
    at = words.find(second)
    while at >= 0:
        for start in (at - half - 1, at - half, at - half + 1):
            if start > 0 and words[start - 1] == " " and _begins(words, start, typed):
                return True
        at = words.find(second, at + 1)
    return False


def _begins(words: str, start: int, typed: str) -> bool:
    return beginning(words[start : start + len(typed) + 1].split(" ")[0], typed) != ""
