"""Where units sit: the form of a position and of a layout, and the check of an own one.

A position is {"id", "name", "group", "edge", "reach_minutes"}: `edge` is where it is drawn, `group`
has those that share a supply and ground (for parking sensors, a bumper), reach is minutes until a hand is
on the unit. Which layouts are ready-made, each sort of part declares.
"""

from ..errors import BadInput
from ..messages import message

EDGES = ("rear", "front", "left", "right")
MOST_POSITIONS = 24

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
        ids[position["id"]] = True
        names[position["name"]] = True


def own_position(index: int, name: str, edge: str) -> dict:
    """Return a position of an own layout: the name as typed, the id from its edge and place there.

    The edge keeps two jobs on one vehicle apart: the first at the rear is not the first in front.
    """
    return position("{}{}-{}".format(OWN, edge, index + 1), name.strip(), edge, edge, 3)


def position(identity: str, name: str, group: str, edge: str, reach: int) -> dict:
    """Return a position of a ready-made layout."""
    return {"id": identity, "name": name, "group": group, "edge": edge, "reach_minutes": reach}


def layout(identity: str, name: dict, positions: list[dict]) -> dict:
    """Return a ready-made layout."""
    return {"id": identity, "name": name, "positions": positions}
