"""The unit was not accepted or refused at a counter before."""

from .. import phrases
from ..facts.returns import is_final
from ..words import words
from .check import check


def look(state, case):
    """Refuse a unit that was decided before; say so of one that was held."""
    past = case["returns"]
    finals = [entry for entry in past if is_final(entry)]
    if finals:
        last = finals[-1]["decision"]
        sentence = "{} {}, signed by {}.".format(
            phrases.sentence_case(words.DECIDED[last["decision"]]),
            words.ago(last["at"], case["now"]),
            last["signed"],
        )
        if [each for each in finals if each["twice"]]:
            made = [each for one in finals for each in one["decisions"]]
            sentence = "Two counters decided on it: {}. Both stay on record.".format(
                phrases.listed(
                    [
                        "{} (signed by {})".format(words.DECIDED[each["decision"]], each["signed"])
                        for each in made
                    ]
                )
            )
        return check("fail", "Returned before", sentence)
    if past and past[-1]["decision"]:
        last = past[-1]["decision"]
        return check(
            "pass",
            "Not decided before",
            "Held {}, signed by {}.".format(words.ago(last["at"], case["now"]), last["signed"]),
        )
    if case["unit"] is None or case["unknown"]:
        return None
    return check("pass", "Not returned before", "No earlier return is on record.")
