"""What whoever hosts the site has to know: printed by the command, and kept beside the files."""

from server.words.spoken import say


def notes() -> str:
    """Returns it in the language in use."""
    return say("serving-site-notes") + "\n"
