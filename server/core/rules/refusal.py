"""The shape of a refusal: what is wrong, in a heading and a sentence, and what to do now."""


def refusal(rule: str, title: dict, sentence, do: dict, override: bool = False) -> dict:
    """Return a refusal, its words as messages; `override` says that a reason given by the user lifts it."""
    return {"rule": rule, "title": title, "sentence": sentence, "do": do, "override": override}
