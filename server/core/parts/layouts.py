"""Where units sit: the form of a position and of a layout, and the check of an own one.

A position is {"id", "name", "group", "edge", "reach_minutes"}: `edge` is where it is drawn, `group`
has those that share a supply and ground (for parking sensors, a bumper), reach is minutes until a hand is
on the unit. One that lies on a plan has "x" and "y" besides, in thousandths of its width from the left and
of its length from the top; "part" and "pins" are noted of some that a person drew. Which layouts are
ready-made, each sort of part declares.
"""

from ..errors import BadInput
from ..messages import message

# The far end of the plan, in both directions.
FAR_END = 1000

EDGES = ("rear", "front", "left", "right")
MOST_POSITIONS = 24
# Characters of a part number, and of what is said of the pins.
MOST_NOTED = 80

# How the id of a position begins that a person named.
OWN = "own-"


def check_positions(positions, where: str = "positions") -> None:
    """Raise BadInput unless `positions` is a list of 1 to 24 well-formed, different positions."""
    if not isinstance(positions, list) or not 1 <= len(positions) <= MOST_POSITIONS:
        raise BadInput(where, positions, message("refusals-positions", most=MOST_POSITIONS))
    ids, names = {}, {}
    for index in range(len(positions)):
        position = positions[index]
        path = "{}[{}]".format(where, index)
        if not isinstance(position, dict):
            raise BadInput(path, position, message("refusals-object"))
        for field in ("id", "name", "group"):
            value = position.get(field)
            if not isinstance(value, str) or not 1 <= len(value.strip()) <= 40:
                raise BadInput(path + "." + field, value, message("refusals-text", least=1, most=40))
        if position.get("edge") not in EDGES:
            edges = message("refusals-one-of", choices=", ".join(EDGES))
            raise BadInput(path + ".edge", position.get("edge"), edges)
        reach = position.get("reach_minutes")
        if isinstance(reach, bool) or not isinstance(reach, int) or not 0 <= reach <= 600:
            raise BadInput(path + ".reach_minutes", reach, message("refusals-minutes", most=600))
        if position["id"] in ids:
            raise BadInput(path + ".id", position["id"], message("refusals-id-taken"))
        if position["name"] in names:
            raise BadInput(path + ".name", position["name"], message("refusals-name-taken"))
        for field in ("x", "y"):
            if field in position and not _is_place(position[field]):
                raise BadInput(path + "." + field, position[field], message("refusals-place-on-plan"))
        for field in ("part", "pins"):
            if not isinstance(position.get(field, ""), str) or len(position.get(field, "")) > MOST_NOTED:
                wanted = message("refusals-text", least=0, most=MOST_NOTED)
                raise BadInput(path + "." + field, position[field], wanted)
        ids[position["id"]] = True
        names[position["name"]] = True


def _is_place(value) -> bool:
    return isinstance(value, int) and not isinstance(value, bool) and 0 <= value <= FAR_END


def position(identity: str, name: str, group: str, edge: str, reach: int, place: tuple = ()) -> dict:
    """Return a position of a ready-made layout; `place` is (x, y) on the plan where it has one."""
    made = {"id": identity, "name": name, "group": group, "edge": edge, "reach_minutes": reach}
    if place:
        made["x"], made["y"] = place
    return made


def are_placed(positions: list) -> bool:
    """Tell whether each of some positions has its place on the plan."""
    return not [each for each in positions if "x" not in each or "y" not in each]


def layout(identity: str, name: dict, positions: list[dict]) -> dict:
    """Return a ready-made layout."""
    return {"id": identity, "name": name, "positions": positions}
