"""Where the sensors sit: ready-made layouts, and the check of an own one.

A position is {"id", "name", "group", "edge", "reach_minutes"}: `edge` is where it is drawn, `group`
is the bumper whose supply and ground it shares. Reach (minutes until a hand is on the sensor) is
common practice, no source: outer corners are easier than the middle behind the plate.
"""

from ..errors import BadInput

EDGES = ("rear", "front", "left", "right")
MOST_POSITIONS = 24

_FOUR = ("left outer", "left inner", "right inner", "right outer")
_SIX = ("left outer", "left middle", "left inner", "right inner", "right middle", "right outer")
_SIDES = (("left", "left front side"), ("left", "left rear side"),
          ("right", "right front side"), ("right", "right rear side"))  # fmt: skip


def all_layouts() -> list[dict]:
    """Return the ready-made layouts as [{"id", "name", "positions"}]."""
    rear4, front4 = _bumper("rear", _FOUR), _bumper("front", _FOUR)
    return [
        _layout("rear-4", "Rear, 4 sensors", rear4),
        _layout("rear-6", "Rear, 6 sensors", _bumper("rear", _SIX)),
        _layout("front-4", "Front, 4 sensors", front4),
        _layout("front-6", "Front, 6 sensors", _bumper("front", _SIX)),
        _layout("both-8", "Front and rear, 8 sensors", _named(front4) + _named(rear4)),
        _layout("both-12", "Front and rear, 12 sensors",
                _named(_bumper("front", _SIX)) + _named(_bumper("rear", _SIX))),
        _layout("around-12", "All round, 12 sensors", _named(front4) + _named(rear4) + _sides()),
    ]  # fmt: skip


def check_positions(positions, where: str = "positions") -> None:
    """Raise BadInput unless `positions` is a list of 1 to 24 well-formed, different positions."""
    if not isinstance(positions, list) or not 1 <= len(positions) <= MOST_POSITIONS:
        raise BadInput(where, positions, "a list of 1 to {} positions".format(MOST_POSITIONS))
    ids, names = {}, {}
    for index in range(len(positions)):
        position = positions[index]
        path = "{}[{}]".format(where, index)
        if not isinstance(position, dict):
            raise BadInput(path, position, "an object")
        for field in ("id", "name", "group"):
            value = position.get(field)
            if not isinstance(value, str) or not 1 <= len(value.strip()) <= 40:
                raise BadInput(path + "." + field, value, "text of 1 to 40 characters")
        if position.get("edge") not in EDGES:
            raise BadInput(path + ".edge", position.get("edge"), "one of " + ", ".join(EDGES))
        reach = position.get("reach_minutes")
        if isinstance(reach, bool) or not isinstance(reach, int) or not 0 <= reach <= 600:
            raise BadInput(path + ".reach_minutes", reach, "whole minutes from 0 to 600")
        if position["id"] in ids:
            raise BadInput(path + ".id", position["id"], "an id that no other position has")
        if position["name"] in names:
            raise BadInput(path + ".name", position["name"], "a name that no other position has")
        ids[position["id"]] = True
        names[position["name"]] = True


def own_position(index: int, name: str, edge: str) -> dict:
    """Return a position of an own layout: the name as typed, the id from its edge and place there.

    The edge keeps two jobs on one vehicle apart: the first at the rear is not the first in front.
    """
    return _position("own-{}-{}".format(edge, index + 1), name.strip(), edge, edge, 3)


def _bumper(edge: str, names: tuple) -> list[dict]:
    positions = []
    for name in names:
        reach = 2 if "outer" in name else 3
        positions.append(_position(edge + "-" + name.replace(" ", "-"), name, edge, edge, reach))
    return positions


def _sides() -> list[dict]:
    """Side sensors take supply and ground from the bumper next to them (common practice, no source)."""
    positions = []
    for edge, name in _SIDES:
        group = "front" if "front" in name else "rear"
        positions.append(_position(name.replace(" ", "-"), name, group, edge, 3))
    return positions


def _named(positions: list[dict]) -> list[dict]:
    """Put the bumper into the name, needed once a vehicle has more than one bumper with sensors."""
    named = []
    for position in positions:
        copy = dict(position)
        copy["name"] = position["edge"] + " " + position["name"]
        named.append(copy)
    return named


def _position(identity: str, name: str, group: str, edge: str, reach: int) -> dict:
    return {"id": identity, "name": name, "group": group, "edge": edge, "reach_minutes": reach}


def _layout(identity: str, name: str, positions: list[dict]) -> dict:
    return {"id": identity, "name": name, "positions": positions}
