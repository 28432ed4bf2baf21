"""The shape of a check: how it stands, in a heading and in a sentence."""


def check(standing: str, title: str, sentence: str) -> dict:
    """Return a check; `standing` is "pass", "hold" or "fail"."""
    return {"state": standing, "title": title, "sentence": sentence}
