"""The shape of a check: how it stands, in a heading and in a sentence."""


def check(standing: str, title: dict, sentence: dict) -> dict:
    """Return a check, its words as messages; `standing` is "pass", "hold", "fail" or "note"."""
    return {"state": standing, "title": title, "sentence": sentence}
