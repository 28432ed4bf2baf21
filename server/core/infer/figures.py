"""How a float becomes a figure that is shown: an integer, the same on both hosts."""

WHOLE = 1000000000


def parts(chance: float) -> int:
    """Return a probability in parts per billion."""
    return int(chance * WHOLE + 0.5)


def hundredths(minutes: float) -> int:
    """Return minutes in hundredths."""
    return int(minutes * 100 + 0.5)


def thousandths(bits: float) -> int:
    """Return bits in thousandths; a rounding error below nothing is nothing."""
    return int(bits * 1000 + 0.5) if bits > 0 else 0


def apportion(chances: list) -> list:
    """Return chances that add up to one in parts per billion that add up to exactly a billion.

    The largest takes what rounding left over, where it is smallest beside the figure.
    """
    shares = [parts(chance) for chance in chances]
    largest = 0
    total = 0
    for n, share in enumerate(shares):
        total += share
        if share > shares[largest]:
            largest = n
    shares[largest] += WHOLE - total
    return shares
