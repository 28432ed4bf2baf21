"""What goes wrong with a register; needs no driver."""


class NotReached(Exception):
    """The register did not answer in time; whether it did what it was asked is not known."""
