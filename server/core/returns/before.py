"""The unit was not accepted or refused at a counter before."""

from ..facts.returns import is_final
from ..messages import all_of
from ..messages import message
from ..words import words
from .check import check


def look(state, case):
    """Refuse a unit that was decided before; say so of one that was held."""
    past = case["returns"]
    finals = [entry for entry in past if is_final(entry)]
    if finals:
        last = finals[-1]["decision"]
        title = message("returns-before-decided-title", decision=last["decision"])
        sentence = message(
            "returns-before-decided",
            decision=last["decision"],
            ago=words.ago(last["at"], case["now"]),
            signed=last["signed"],
        )
        if [each for each in finals if each["twice"]]:
            made = [each for one in finals for each in one["decisions"]]
            said = [
                message("returns-before-signed", decision=each["decision"], signed=each["signed"])
                for each in made
            ]
            title = message("returns-before-title")
            sentence = message("returns-before-twice", decisions=all_of(said))
        return check("fail", title, sentence)
    if past and past[-1]["decision"]:
        last = past[-1]["decision"]
        return check(
            "pass",
            message("returns-before-held-title"),
            message("returns-before-held", ago=words.ago(last["at"], case["now"]), signed=last["signed"]),
        )
    if case["unit"] is None or case["unknown"]:
        return None
    return check("pass", message("returns-before-not-title"), message("returns-before-not"))
