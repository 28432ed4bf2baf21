"""What the maker's own symbol on a part or its bag says: part number and serial, so that nobody types them.

Two forms are met. An envelope (`identified`) says which number is which. A plain text, as most Code 128
symbols hold it, does not: it is what is on record, and where nothing or more than one of its readings is,
the person says. Nothing is recorded from a symbol unseen.
"""

from ..errors import BadInput
from ..messages import all_of
from ..messages import message
from . import labels
from .identified import ELEMENTS
from .identified import GS
from .identified import element
from .identified import is_envelope
from .identified import meaning_of
from .identified import opened

_LONGEST = 80  # what the fields of an event take
_MOST_CHOICES = 8


def read(texts, host: str = "", is_on_record=None) -> dict:
    """Say what numbers the symbols in view hold; a bag often carries several, one for each number.

    `is_on_record(field, value)` tells of a "part" or "serial" number whether it is known; without it none is.

    {"outcome": "numbers", "part", "serial", "sentence"} fills the fields ("" where it says none);
    {"outcome": "choices", "title", "sentence", "choices": [{"words", "part", "serial"}]} wants the person
    to say which; "label", "foreign", "no_numbers" and "broken" carry {"title", "sentence"}.
    """
    if not isinstance(texts, list) or not texts:
        raise BadInput("texts", texts, message("codes-symbol-texts-wanted"))
    known = is_on_record or (lambda field, value: False)
    answers = [_read_one(text, host, known) for text in texts]
    numbers = [answer for answer in answers if answer["outcome"] == "numbers"]
    parts = _different([answer["part"] for answer in numbers])
    serials = _different([answer["serial"] for answer in numbers])
    # An envelope says which number is which; a plain text that the record settles leaves others open.
    envelopes = [n for n in range(len(texts)) if is_envelope(texts[n])]
    told = [n for n in envelopes if answers[n]["outcome"] == "numbers"]
    left = [answer for answer in answers if answer["outcome"] == "choices"]
    if numbers and len(parts) < 2 and len(serials) < 2 and (told or not left):
        return _numbers(parts[0] if parts else "", serials[0] if serials else "")
    choices = []
    for answer in answers:
        choices += _as_choices(answer)
    if choices:
        return _choices(_known_first(choices, known))
    return answers[0]


def _read_one(text, host: str, known) -> dict:
    if not isinstance(text, str):
        raise BadInput("texts", text, message("codes-symbol-text-wanted"))
    if is_envelope(text):
        return _envelope(text, known)
    bare = text.strip()
    told = labels.parse(bare, host)
    if told["outcome"] in ("ours", "other_host"):
        return _told(
            "label",
            message("codes-own-label-title") if told["outcome"] == "ours" else told["title"],
            message("codes-own-label"),
        )
    if "://" in bare:
        return _told(
            "foreign",
            message("codes-web-address-title"),
            message("codes-web-address"),
        )
    return _plain(bare, known)


def _envelope(text: str, known) -> dict:
    """Read the numbers of an envelope."""
    found = opened(text)
    if found.fault == "not whole":
        return _told("broken", message("codes-symbol-not-whole-title"), message("codes-symbol-not-whole"))
    if found.fault == "two":
        return _told("broken", message("codes-symbol-two-title"), message("codes-symbol-two"))
    numbers = []
    for identifier, value in found.elements:
        field, name = meaning_of(identifier)
        if field and (field, name, value) not in numbers:
            numbers.append((field, name, value))
    for _, _, value in numbers:
        if not _fits(value):
            return _unreadable()
    if not numbers:
        return _nothing_of_use(found)
    parts = _one_known("part", _different([value for field, _, value in numbers if field == "part"]), known)
    serials = _different([value for field, _, value in numbers if field == "serial"])
    serials = _one_known("serial", serials, known)
    if len(parts) < 2 and len(serials) < 2:
        return _numbers(parts[0] if parts else "", serials[0] if serials else "")
    choices = [_choice(field, value, _noted(field, name, "")) for field, name, value in numbers]
    return _choices(_known_first(choices, known))


def _nothing_of_use(envelope) -> dict:
    if ELEMENTS not in envelope.formats:
        sentence = message("codes-no-format", wanted=ELEMENTS)
        if envelope.formats:
            sentence = message("codes-other-format", formats=all_of(envelope.formats), wanted=ELEMENTS)
    else:
        held = [_held(identifier, value) for identifier, value in envelope.elements if _fits(value)]
        sentence = (
            message("codes-holds-others", held=all_of(held)) if held else message("codes-holds-nothing")
        )
    return _told("no_numbers", message("codes-no-numbers-title"), sentence)


def _held(identifier: str, value: str) -> dict:
    _, name = meaning_of(identifier)
    if name:
        return message("codes-held", meaning=name, value=value)
    return (
        message("codes-held-marked", mark=identifier, value=value)
        if identifier
        else message("codes-held-text", value=value)
    )


def _plain(bare: str, known) -> dict:
    """Read a text that does not say what it is, whole and, where it begins with a mark, without it.

    Of each piece the one reading counts that is on record; else all are offered.
    """
    choices = []
    settled = True
    for chunk in bare.split(GS):
        chunk = chunk.strip()
        if not chunk:
            continue
        if not _fits(chunk):
            return _unreadable()
        readings = []
        identifier, value = element(chunk)
        field, name = meaning_of(identifier)
        if field and value:
            readings.append(_choice(field, value, _noted(field, name, identifier)))
        readings.append(_choice("part", chunk))
        readings.append(_choice("serial", chunk))
        on_record = [each for each in readings if _is_known(each, known)]
        settled = settled and len(on_record) == 1
        choices += on_record if len(on_record) == 1 else readings
    if not choices:
        return _told("no_numbers", message("codes-empty-symbol-title"), message("codes-empty-symbol"))
    parts = _different([choice["part"] for choice in choices])
    serials = _different([choice["serial"] for choice in choices])
    if settled and len(parts) < 2 and len(serials) < 2:
        return _numbers(parts[0] if parts else "", serials[0] if serials else "")
    return _choices(_known_first(choices, known))


def _one_known(field: str, values: list, known) -> list:
    """Return the one of several values that is on record; all of them where none is, or more than one."""
    if len(values) < 2:
        return values
    on_record = [value for value in values if known(field, value)]
    return on_record if len(on_record) == 1 else values


def _is_known(choice: dict, known) -> bool:
    field = "part" if choice["part"] else "serial"
    return known(field, choice[field])


def _known_first(choices: list, known) -> list:
    """Return the choices with those first that are on record."""
    on_record = [each for each in choices if _is_known(each, known)]
    return on_record + [each for each in choices if each not in on_record]


def _fits(value: str) -> bool:
    """Tell whether a value can stand in a field: short enough, and nothing in it that does not print."""
    for character in value:
        if not " " <= character <= "~":
            return False
    return 0 < len(value) <= _LONGEST


def _different(values: list) -> list:
    """Return the values without "" and without repeats, in the order in which they came."""
    found = []
    for value in values:
        if value and value not in found:
            found.append(value)
    return found


def _numbers(part: str, serial: str) -> dict:
    if part and serial:
        sentence = message("codes-read-both", part=part, serial=serial)
    else:
        sentence = message("codes-read-one", field="part" if part else "serial", value=part or serial)
    return {"outcome": "numbers", "part": part, "serial": serial, "sentence": sentence}


def _choice(field: str, value: str, note: dict | None = None) -> dict:
    words = message("codes-choice", field=field, value=value)
    return {
        "words": message("codes-choice-noted", choice=words, note=note) if note else words,
        "part": value if field == "part" else "",
        "serial": value if field == "serial" else "",
    }


def _noted(field: str, meaning: str, mark: str) -> dict | None:
    """Return what a choice says beside its number: what that means, unless its field does, and its mark."""
    meant = message("codes-meaning", meaning=meaning) if meaning != field else None
    if not mark:
        return meant
    return (
        message("codes-meaning-marked", meaning=meant, mark=mark)
        if meant
        else message("codes-marked", mark=mark)
    )


def _as_choices(answer: dict) -> list:
    """Return what one symbol holds as things to choose from."""
    if answer["outcome"] == "choices":
        return answer["choices"]
    if answer["outcome"] != "numbers":
        return []
    return [_choice(field, answer[field]) for field in ("part", "serial") if answer[field]]


def _choices(choices: list) -> dict:
    return {
        "outcome": "choices",
        "title": message("codes-which-title"),
        "sentence": message("codes-which"),
        "choices": choices[:_MOST_CHOICES],
    }


def _unreadable() -> dict:
    return _told(
        "broken",
        message("codes-symbol-unreadable-title"),
        message("codes-symbol-unreadable", most=_LONGEST),
    )


def _told(outcome: str, title: dict, sentence: dict) -> dict:
    return {"outcome": outcome, "title": title, "sentence": sentence}
