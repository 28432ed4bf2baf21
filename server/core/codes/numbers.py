"""Part numbers and serial numbers as they are compared: here and there they are printed differently."""


def plain(text: str) -> str:
    """Return a number without its separators, in capitals; "" where it is nothing else."""
    return "".join([chr(ord(c) - 32) if "a" <= c <= "z" else c for c in text if c not in " -./_"])
