"""Why a command is not carried out."""


class CommandRefused(Exception):
    """A command that cannot be carried out; the text names the value, the cause and what to do."""
