"""Which connection is closed when there are too many: the slowest, and never the one that just came.

A phone behind the same address as somebody who holds many connections still gets in. To be turned away
itself, it would have to be slower than all the others.
"""

from collections import Counter
from collections.abc import Iterable

from server.serving.connections.connection import Connection
from server.serving.connections.connection import Stage
from server.serving.connections.limits import Limits


def to_leave(
    inside: Iterable[Connection], newcomer: Connection, limits: Limits, at: float
) -> Connection | None:
    """Returns the connection whose place a newcomer takes, or None while there is room.

    First an address keeps to its own share; then the address with most connections gives way. Those
    that the app is working for stay, for their answer is due; without any other the newcomer leaves.
    """
    everybody = list(inside)
    waiting = [each for each in everybody if each is not newcomer and each.stage is not Stage.WORK]
    same = [each for each in waiting if each.network == newcomer.network]
    if len(same) >= limits.connections_an_address:
        return slowest(same, limits, at)
    if len(everybody) <= limits.connections:
        return None
    if not waiting:
        return newcomer
    per_network = Counter(each.network for each in waiting)
    largest = max(per_network, key=lambda network: (per_network[network], network))
    return slowest([each for each in waiting if each.network == largest], limits, at)


def slowest(connections: Iterable[Connection], limits: Limits, at: float) -> Connection:
    """Returns the one to go first.

    The young are spared as long as there are others, then those that were answered once; among
    equals the one that moves least, and then the oldest.
    """
    return min(
        connections,
        key=lambda each: (
            at - each.opened < limits.young,
            each.answered > 0,
            each.pace(at),
            each.opened,
        ),
    )
