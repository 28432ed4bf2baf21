"""Several causes in one breath: 'the sensors from left outer and right inner'.

Names that begin alike are put together, so that three suspects do not fill a screen.
"""

from .. import phrases
from ..parts.sort import Sort


def _beginnings(sort: Sort) -> tuple:
    """Return (how a single name begins, how several of them begin), ... in the words of a sort of part."""
    return (
        ("the {} from ".format(sort.unit), "the {} from ".format(sort.units)),
        (sort.unit + " ", sort.units + " "),
        ("the wiring at ", "the wiring at "),
        (sort.obstruction.words + " at ", sort.obstruction.words + " at "),
        ("the supply or ground of ", "the supply or ground of "),
    )


def together(names: list, sort: Sort) -> str:
    """Return the names as a list for a sentence, in the order of their first of a kind."""
    kinds, beginnings = [], _beginnings(sort)
    for name in names:
        start, several = name, ""
        for one, many in beginnings:
            # What stands in brackets belongs to one name only.
            if name.startswith(one) and "(" not in name:
                start, several = one, many
        same = [kind for kind in kinds if kind[0] == start and several]
        if same:
            same[0][2].append(name[len(start) :])
        else:
            kinds.append((start, several, [name[len(start) :] if several else name]))
    said = []
    for start, several, rest in kinds:
        if len(rest) > 1:
            said.append(several + phrases.listed(rest))
        else:
            said.append(start + rest[0] if several else rest[0])
    # A name with an 'and' or a comma of its own needs a comma before the last 'and'.
    plain = not [each for each in said if ", " in each or " and " in each]
    return phrases.listed(said, " and " if plain else ", and ")
