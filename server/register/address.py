"""Where a register lies, as the command line has it: postgresql://USER@HOST/DATABASE."""

from typing import NamedTuple

from server.core.messages import message
from server.refusals import CommandRefused

SCHEMES = ("postgresql://", "postgres://")


class RegisterAddress(NamedTuple):
    """What the driver is given, and what may be shown of it: never the password."""

    given: str
    shown: str


def checked(text: str) -> RegisterAddress:
    """Returns the address; refuses what is none, and a machine without the driver."""
    try:
        from psycopg import ProgrammingError  # here: only who keeps a register needs the driver
        from psycopg.conninfo import conninfo_to_dict
    except ImportError:
        raise CommandRefused(message("register-no-driver")) from None
    if not text.startswith(SCHEMES):
        raise CommandRefused(message("register-no-address"))
    try:
        parts = conninfo_to_dict(text)
    except ProgrammingError:
        raise CommandRefused(message("register-no-address")) from None
    host, database = (str(parts.get(name) or "") for name in ("host", "dbname"))
    return RegisterAddress(text, f"{host or 'localhost'}/{database}")
