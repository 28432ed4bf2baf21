"""A fact that has not been recorded yet."""


def draft(kind: str, **data) -> dict:
    """Return the kind and data of a fact that the app may record as it is."""
    return {"kind": kind, "data": data}
