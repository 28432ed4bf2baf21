"""What a cause that is sure but does not survive its assumptions still needs: the doubt to plan against."""

from ..infer import holds
from ..infer.figures import parts
from ..infer.variations import cause
from ..infer.variations import explanation


def weighed(belief, entries: list, answer: dict, variations) -> list:
    """Return the explanations as they would be under the assumption that a cause leans on most.

    Where a live cause reaches the confidence without standing, any move would seem to settle what seems
    settled already. Then the moves are chosen for the case that speaks against it. The very same list
    comes back where there is no such cause, and where even that case leaves as much as it has to: what
    lacks then is the confidence, and the cheapest move, one that tells nothing, would seem to settle it.
    """
    case = belief.model.case
    standing = [entry["cause"] for entry in answer["certain"]]
    live = belief.model.live()
    chances = {}
    for entry in answer["causes"]:
        chances[entry["cause"]] = entry["probability"]
    worst = None
    for suspect in belief.suspects:
        name = belief.model.names[suspect]
        if not live[suspect] or name in standing or chances[name] < parts(case.confidence):
            continue
        for what, factor, _ in holds.varied(case.doubt):
            chance = parts(variations.chance(what, factor, cause(name)))
            if worst is None or chance < worst[0]:
                worst = (chance, what, factor)
    if worst is None or answer["verdict"]:
        return entries
    _, what, factor = worst
    rows = []
    for _, mask in entries:
        names = [belief.model.names[c] for n, c in enumerate(belief.suspects) if mask >> n & 1]
        rows.append((-variations.chance(what, factor, explanation(names)), mask))
    against = [(-less, mask) for less, mask in sorted(rows)]
    return entries if parts(against[0][0]) >= holds.least(parts(case.confidence)) else against
