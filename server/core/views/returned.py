"""The returns of a unit in sentences: who received it, what was decided and why, and who signed."""

from ..facts.whose import phone_of
from ..messages import all_of
from ..messages import message
from ..messages import sentences
from . import counter_lists


def returns(state, unit: dict) -> list[dict]:
    """Return the returns of a unit as the counter lists them, each with its sentences, the latest last."""
    told = counter_lists.returns_of(unit)
    for entry in told:
        entry["received"] = _received(entry)
        if entry["decision"]:
            entry["decision"]["sentence"] = _decision(state, entry["decision"])
    return told


def _received(entry) -> dict:
    said = [message("views-returned-received", how=entry["how"])]
    if entry["part"] and entry["serial"]:
        said.append(message("views-returned-read-both", part=entry["part"], serial=entry["serial"]))
    elif entry["part"]:
        said.append(message("views-returned-read-part", part=entry["part"]))
    elif entry["serial"]:
        said.append(message("views-returned-read-serial", serial=entry["serial"]))
    said.append(entry["note"])
    return sentences(said)


def _decision(state, decided) -> dict:
    said = [message("views-returned-decided", decision=decided["decision"])]
    if decided["overrule"]:
        because = decided["overrule"].rstrip(".")
        said.append(message("views-returned-overruled", proposed=decided["proposed"], because=because))
    elif decided["about"]:
        said.append(message("views-returned-against", about=all_of(decided["about"])))
    if decided["signed"] != decided["actor"]:
        said.append(message("views-returned-signed", actor=decided["actor"], signed=decided["signed"]))
    device, _, seq = decided["event"].rpartition(":")
    phone = phone_of(state, device, int(seq))
    if phone and decided["signed"] != phone["name"]:
        said.append(message("views-returned-phone", name=phone["name"]))
        if decided["signed"] not in phone["people"]:
            said.append(message("views-history-not-said", actor=decided["signed"]))
    return sentences(said)
