"""In whose name an entry is: that of its person, and whose phone it was where the phone is another's."""

from ..facts.whose import phone_of
from ..messages import message


def who(state, event: str, actor: str) -> str | dict:
    """Return the name beside an entry, or a message; `event` is the entry's identity."""
    device, _, seq = event.rpartition(":")
    phone = phone_of(state, device, int(seq))
    if phone is None or actor == phone["name"]:
        return actor or message("custody-no-name")
    return on_the_phone_of(phone, actor)


def on_the_phone_of(phone: dict, actor: str) -> dict:
    """Return a name together with whose phone it was; `phone` is what is said of a phone of another name."""
    return message("views-history-phone", how=how_said(phone, actor), actor=actor, name=phone["name"])


def how_said(phone: dict, actor: str) -> str:
    """Tell a name that shares the phone (`shared`) from one that only the entry says, and from none."""
    if not actor:
        return "nobody"
    return "shared" if actor in phone["people"] else "said"
