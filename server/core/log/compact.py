"""Values as a phone hands over many of them: each text once, and every place where it stands as a number.

MicroPython looks up each text that it reads among all the names it knows, which takes most of the time that
reading JSON takes there; and the keys of an entry are most of its texts. `static/core/compact.js` is the
other side.
"""

from ..errors import BadInput
from ..messages import message

_SCALARS, _MIXED = -1, -2  # what stands first in a list: it has nothing but scalars, or lists and objects too


def opened(compact) -> dict:
    """Return the object that {"scalars", "shapes", "value"} stands for; raises BadInput where it is broken.

    `scalars` are all texts, numbers, truths and nulls there are. A shape is [keys of scalars, keys of lists
    and objects]. A scalar is given by its number, an object as [number of its shape, its values], a list as
    [-1 or -2, its items].
    """
    try:
        scalars = compact["scalars"]
        shapes = []
        for plain, nested in compact["shapes"]:
            keys = [scalars[key] for key in plain]
            inner = [scalars[key] for key in nested]
            # A copy of an object that has its keys already is made in one piece, where one that grows is not.
            shapes.append(({key: None for key in keys + inner}, keys, inner))
        value = _value(compact["value"], scalars, shapes)
    except (IndexError, KeyError, TypeError, ValueError):
        value = None
    if not isinstance(value, dict):
        raise BadInput("compact", compact, message("refusals-compact"))
    return value


def _value(node, scalars: list, shapes: list):
    if isinstance(node, int):
        return scalars[node]
    form = node[0]
    if form == _SCALARS:
        return [scalars[place] for place in node[1:]]
    if form == _MIXED:
        return [_value(item, scalars, shapes) for item in node[1:]]
    empty, plain, nested = shapes[form]
    value = empty.copy()
    at = 1
    for key in plain:
        value[key] = scalars[node[at]]
        at += 1
    for key in nested:
        value[key] = _value(node[at], scalars, shapes)
        at += 1
    return value
