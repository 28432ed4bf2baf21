"""Why a command is not carried out."""

from server.words.spoken import Told


class CommandRefused(Told):
    """A command that cannot be carried out; the message names the value, the cause and what to do."""
