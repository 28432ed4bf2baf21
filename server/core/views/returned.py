"""The returns of a unit in sentences: who received it, what was decided and why, and who signed."""

from .. import phrases
from ..words import words
from . import counter_lists

_HOW = {"scanned": "label scanned", "typed": "code typed in", "tapped": "not scanned"}


def returns(unit: dict) -> list[dict]:
    """Return the returns of a unit as the counter lists them, each with its sentences, the latest last."""
    told = counter_lists.returns_of(unit)
    for entry in told:
        entry["received"] = _received(entry)
        if entry["decision"]:
            entry["decision"]["sentence"] = _decision(entry["decision"])
    return told


def _received(entry) -> str:
    said = ["Received at the counter, {}.".format(_HOW.get(entry["how"], entry["how"]))]
    read = [
        name + " " + entry[field] for field, name in (("part", "part"), ("serial", "serial")) if entry[field]
    ]
    if read:
        said.append("Read off it: {}.".format(", ".join(read)))
    if entry["note"]:
        said.append(entry["note"])
    return " ".join(said)


def _decision(decided) -> str:
    said = "{}.".format(phrases.sentence_case(words.DECIDED[decided["decision"]]))
    if decided["overrule"]:
        said += " The record spoke for: {}. Decided otherwise because: {}.".format(
            words.DECIDED[decided["proposed"]], decided["overrule"].rstrip(".")
        )
    elif decided["about"]:
        said += " What stood against it: {}.".format(phrases.listed(decided["about"]))
    return said
