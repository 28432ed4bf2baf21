"""Which letter stands for which in a search: small for large, plain for accented, a gap for a sign.

MicroPython knows no case beyond ASCII and no Unicode tables, so the letters of the languages that are written
in Latin, Greek and Cyrillic are named here. A letter that is not named stands for itself.
"""

_ACCENTED = {
    "a": "àáâãäåāăąǎ",
    "ae": "æ",
    "c": "çćĉċč",
    "d": "ďđð",
    "e": "èéêëēĕėęě",
    "g": "ĝğġģ",
    "h": "ĥħ",
    "i": "ìíîïĩīĭįıǐ",
    "j": "ĵ",
    "k": "ķ",
    "l": "ĺļľŀł",
    "n": "ñńņňŋ",
    "o": "òóôõöøōŏőǒ",
    "oe": "œ",
    "r": "ŕŗř",
    "s": "śŝşšș",
    "ss": "ßẞ",
    "t": "ţťŧț",
    "th": "þ",
    "u": "ùúûüũūŭůűųǔ",
    "w": "ŵ",
    "y": "ýÿŷ",
    "z": "źżž",
    "α": "ά",
    "ε": "έ",
    "η": "ή",
    "ι": "ίϊΐ",
    "ο": "ό",
    "σ": "ς",
    "υ": "ύϋΰ",
    "ω": "ώ",
    "е": "ёЁѐЀ",
    "и": "йЙѝЍ",
}
_LARGE = {
    "a": "ÀÁÂÃÄÅĀĂĄǍ",
    "ae": "Æ",
    "c": "ÇĆĈĊČ",
    "d": "ĎĐÐ",
    "e": "ÈÉÊËĒĔĖĘĚ",
    "g": "ĜĞĠĢ",
    "h": "ĤĦ",
    "i": "ÌÍÎÏĨĪĬĮİǏ",
    "j": "Ĵ",
    "k": "Ķ",
    "l": "ĹĻĽĿŁ",
    "n": "ÑŃŅŇŊ",
    "o": "ÒÓÔÕÖØŌŎŐǑ",
    "oe": "Œ",
    "r": "ŔŖŘ",
    "s": "ŚŜŞŠȘ",
    "t": "ŢŤŦȚ",
    "th": "Þ",
    "u": "ÙÚÛÜŨŪŬŮŰŲǓ",
    "w": "Ŵ",
    "y": "ÝŸŶ",
    "z": "ŹŻŽ",
    "α": "Ά",
    "ε": "Έ",
    "η": "Ή",
    "ι": "ΊΪ",
    "ο": "Ό",
    "υ": "ΎΫ",
    "ω": "Ώ",
}
# From the first to the last of a run of large letters, and how far on its small ones stand.
_RUNS = (("Α", "Ρ", 32), ("Σ", "Ω", 32), ("А", "Я", 32), ("Ђ", "Џ", 80))
# Signs of Latin-1 and of the block of punctuation; what joins letters or has no width is left out.
_SIGNS = (
    (0x00, 0x2F),
    (0x3A, 0x40),
    (0x5B, 0x60),
    (0x7B, 0xA9),
    (0xAB, 0xB9),
    (0xBB, 0xBF),
    (0x2010, 0x2060),
)
_NO_WIDTH = ((0x0300, 0x036F), (0x200B, 0x200F), (0xAD, 0xAD))


def folded(text: str, gap: str, keep: str = "") -> str:
    """Return a text with small plain letters and `gap` for each sign but those in `keep`."""
    # Not `text.lower()`: beyond ASCII the two hosts know different letters.
    text = text.encode().lower().decode()
    plain = len(text.encode()) == len(text)
    for sign in _ASCII_SIGNS if plain else _ALL_SIGNS:
        if sign in text and sign not in keep:
            text = text.replace(sign, gap)
    if not plain:
        for letter in _LETTERS:
            if letter in text:
                text = text.replace(letter, _LETTERS[letter])
    return text


def _letters() -> dict:
    table = {}
    for first, last in _NO_WIDTH:
        for number in range(first, last + 1):
            table[chr(number)] = ""
    for begin, end, on in _RUNS:
        for number in range(ord(begin), ord(end) + 1):
            table[chr(number)] = chr(number + on)
    for letters in (_ACCENTED, _LARGE):
        for plain in letters:
            for letter in letters[plain]:
                table[letter] = plain
    return table


def _signs() -> list[str]:
    signs = ["×", "÷"]
    for first, last in _SIGNS:
        signs.extend([chr(number) for number in range(first, last + 1)])
    return [sign for sign in signs if sign not in _LETTERS]


_LETTERS = _letters()
_ALL_SIGNS = _signs()
_ASCII_SIGNS = [sign for sign in _ALL_SIGNS if ord(sign) < 128]
