"""The shape of a step: what it says, and what a tap on it records."""

from ..facts.draft import draft
from ..messages import message


def step(identity: str, title, text, **more) -> dict:
    """Return a step; `form` says which kind of screen it needs, the rest has safe defaults.

    `heading` stands over several steps that are gone through on one screen; `title` is then what is next.
    `also` are ways out that are always there: small, below everything else.
    """
    made = {
        "id": identity,
        "title": title,
        "heading": None,
        "text": text,
        "form": None,
        "action": None,
        "second": None,
        "also": [],
        "progress": None,
        "expects": {},
        "choices": [],
    }
    for name in more:
        made[name] = more[name]
    return made


def stop_move() -> dict:
    """Return the way out of a move under way; pulled units are then led back to their places."""
    return action(message("guide-stop-move"), draft("move_dropped", reason="stopped-by-hand"))


def comes_and_goes() -> dict:
    """Return the button that says of a fault that it comes and goes."""
    return action(message("guide-nothing-comes-and-goes"), draft("comes_and_goes_set", value=True))


def ask_for_help() -> dict:
    """Return the choice that rests a job until somebody helps who knows more."""
    return {
        "words": message("guide-sounder-help"),
        "events": [draft("job_paused", why="help", part="", note="")],
    }


def action(words, *drafts) -> dict:
    """Return a button: its words and the facts that a tap on it records."""
    return {"words": words, "events": list(drafts)}
