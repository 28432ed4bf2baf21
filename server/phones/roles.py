"""What phones of each role may ask of the server; which facts they may record is for the core to say.

Everything that is not named here answers phones of either role: they share one log.
"""

from server.core.facts.roles import BENCH
from server.core.facts.roles import COUNTER
from server.core.facts.roles import ROLES
from server.core.messages import message
from server.web.errors import NotAllowed

__all__ = ["BENCH", "COUNTER", "ROLES", "check", "check_may_grant"]

# Beginning of a path -> the one role that it answers.
_ALONE = {
    "/api/labels": BENCH,
    "/api/lessons/yards": BENCH,
    "/api/records/kept": COUNTER,
    "/api/register": COUNTER,
    "/api/slips": COUNTER,
    "/api/returns": COUNTER,
    "/api/search": COUNTER,
}


def check(role: str, path: str) -> None:
    """Refuses a phone what only the other role may ask."""
    for beginning, wanted in _ALONE.items():
        if path.startswith(beginning) and role != wanted:
            raise NotAllowed(
                "role",
                role,
                wanted,
                message("server-other-role", wanted=wanted, role=role),
            )


def check_may_grant(role: str, other: str) -> None:
    """Refuses a phone to let in or put out one of a role that is not its own to give."""
    if role == COUNTER and other != COUNTER:
        raise NotAllowed(
            "role",
            role,
            BENCH,
            message("server-counter-grants"),
        )
