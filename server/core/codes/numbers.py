"""Part numbers and serial numbers as they are compared: here and there they are printed differently."""


def plain(text: str) -> str:
    """Return a number without its separators, in capitals; "" where it is nothing else."""
    return "".join([chr(ord(c) - 32) if "a" <= c <= "z" else c for c in text if c not in " -./_"])


def by_eye(text: str) -> str:
    """Return a number as it is told from others by eye: O is read as 0, I and L as 1, `plain` all else.

    As in Crockford's base32 (crockford.com/base32.html).
    """
    return plain(text).replace("O", "0").replace("I", "1").replace("L", "1")
