"""Causes as parts of a sentence, and several in one breath: 'the sensors from left outer and right inner'.

Causes of one kind are put together, so that three suspects do not fill a screen.
"""

from ..messages import all_of
from ..messages import also_all_of
from ..messages import message
from ..parts.sort import Sort

# Of which causes several are said at once: the argument that then has all of them.
_TOGETHER = {
    "causes-unit": "unit",
    "names-unit-from": "position",
    "causes-circuit": "position",
    "causes-blocked": "position",
    "causes-feed": "group",
}
# What a layout calls its groups.
_GROUPS = ("rear", "front", "left", "right")


def labelled(sort: Sort, unit) -> dict:
    """Return a unit that goes by its code or id."""
    return message("causes-unit", sort=sort.identity, unit=unit, count=1)


def circuit(sort: Sort, position, generation: int = 1) -> dict:
    """Return the wiring of a position; a generation above 1 is what came after a repair."""
    return sort.says("causes-circuit" if generation == 1 else "causes-circuit-again", position=position)


def blocked(sort: Sort, position) -> dict:
    """Return what keeps a good unit from working at a position."""
    return message("causes-blocked", blocked=sort.obstruction.words, position=position)


def feed(sort: Sort, name: str, generation: int = 1) -> dict:
    """Return the supply or ground that a group of positions shares."""
    said = "causes-feed" if generation == 1 else "causes-feed-again"
    return message(said, sort=sort.identity, group=group(name))


def control(generation: int = 1) -> dict:
    """Return the control unit."""
    return message("causes-control" if generation == 1 else "causes-control-again")


def group(name: str):
    """Return what a group of positions is called; one that no layout has goes by its own name."""
    return message("causes-group", group=name) if name in _GROUPS else name


def together(names: list) -> dict:
    """Return the causes as a list for a sentence, in the order of their first of a kind."""
    kinds = []
    for name in names:
        key = _kind_of(name)
        same = [kind for kind in kinds if key and kind[0] == key]
        if same:
            same[0][1].append(name)
        else:
            kinds.append((key, [name]))
    said = [_one_of_kind(alike) for _, alike in kinds]
    # A list of its own, as what blocks a position is, stands apart from the others.
    if len(said) > 1 and [alike for key, alike in kinds if len(alike) > 1 or key == "causes-blocked"]:
        return also_all_of(said)
    return all_of(said)


def _kind_of(name) -> str:
    """Return what causes have to have in common to be said at once; "" where one stands by itself."""
    return name["msg"] if isinstance(name, dict) and name["msg"] in _TOGETHER else ""


def _one_of_kind(alike: list):
    first = alike[0]
    if len(alike) == 1:
        return first
    several = _TOGETHER[first["msg"]]
    args = dict(first["args"])
    args[several] = all_of([each["args"][several] for each in alike])
    if "count" in args:
        args["count"] = len(alike)
    return message(first["msg"], **args)
