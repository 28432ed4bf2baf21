"""Part numbers and serial numbers as they are compared: here and there they are printed differently."""


def plain(text: str) -> str:
    """Return a number without its separators, in capitals; "" where it is nothing else."""
    return "".join([chr(ord(c) - 32) if "a" <= c <= "z" else c for c in text if c not in " -./_"])


def look_alike(one: str, other: str) -> bool:
    """Tell whether two numbers differ in signs alone that people take for each other.

    O is read as 0, I and L as 1, as in Crockford's base32 (crockford.com/base32.html).
    """
    return _by_eye(one) == _by_eye(other)


def _by_eye(text: str) -> str:
    return plain(text).replace("O", "0").replace("I", "1").replace("L", "1")
