"""In whose name an entry is: that of its person, and whose phone it was where the phone is another's."""

from ..facts.whose import phone_of
from ..messages import message


def who(state, event: str, actor: str) -> str | dict:
    """Return the name beside an entry, or a message; `event` is the entry's identity."""
    phone = _anothers(state, event, actor)
    if phone is None:
        return actor or message("custody-no-name")
    return on_the_phone_of(phone, actor)


def whose_phone(state, event: str, actor: str) -> str:
    """Tell whether the phone of an entry is that of the name beside it (`own`), or of another (`other`)."""
    return "other" if _anothers(state, event, actor) else "own"


def _anothers(state, event: str, actor: str) -> dict | None:
    """Return what is said of the phone of an entry where it is in another name, None where it is not."""
    device, _, seq = event.rpartition(":")
    phone = phone_of(state, device, int(seq))
    return None if phone is None or actor == phone["name"] else phone


def on_the_phone_of(phone: dict, actor: str) -> dict:
    """Return a name together with whose phone it was; `phone` is what is said of a phone of another name."""
    return message("views-history-phone", how=how_said(phone, actor), actor=actor, name=phone["name"])


def how_said(phone: dict, actor: str) -> str:
    """Tell a name that shares the phone (`shared`) from one that only the entry says, and from none."""
    if not actor:
        return "nobody"
    return "shared" if actor in phone["people"] else "said"
