"""What the reasoning says in words: short, second person, position names instead of ids."""

NOT_HEARD = "Its sounder was not heard, so nothing proves that the test ran."


def not_watching(position: str) -> str:
    """Say why a test with an unplugged position that tests clean proves nothing."""
    return "{} was unplugged and still tested clean, so the test was not watching.".format(position)
