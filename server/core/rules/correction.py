"""Taking a fact back is allowed where what came after it still makes sense without it."""

from .refusal import refusal


def refuse(fold, draft, job):
    """Refuse a correction of something unknown, of a correction, or one that leaves a contradiction."""
    if draft["kind"] != "corrected":
        return None
    identity = "{}:{}".format(draft["data"]["device"], draft["data"]["seq"])
    target = fold.find(identity)
    if target is None or target["kind"] == "corrected":
        return _refusal("There is no such entry to take back.", "Look in the history.")
    if identity in fold.withdrawn:
        return _refusal("It was taken back before.", "Go on.")
    if target["kind"] == "job_opened":
        return _refusal("Everything else in the job rests on its opening.", "Close the job instead.")
    without = fold.without(identity)
    if _troubles(without) > _troubles(fold.state):
        return _refusal(
            "Later entries rest on this one.",
            "Take back the later ones first, the newest before the older.",
        )
    return None


def _troubles(state) -> int:
    return len(state.conflicts) + len(state.not_understood)


def _refusal(sentence, do):
    return refusal("correction", "This can't be taken back", sentence, do)
