"""What of an entry no host could show: asked of all that is taken in, on a phone as on a server."""

from ..errors import BadInput
from ..log import envelope
from .kinds import KINDS


def outside(event: dict) -> BadInput | None:
    """Return what of a well-formed envelope is out of bounds, or None.

    What a newer version recorded is held to the bounds of the envelope alone. What is kept already is never
    asked: it stays in the log, and every phone draws it as what it is.
    """
    try:
        envelope.bound(event)
    except BadInput as error:
        return error
    kind = None if envelope.is_newer(event) else KINDS.get(event["kind"])
    return kind.out_of_bounds(event["data"]) if kind and not kind.problem(event["data"]) else None
