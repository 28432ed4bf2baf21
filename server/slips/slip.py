"""What stands on the slip of a decision: shop, decision in large letters, sensor, who signed it and why."""

from datetime import datetime
from typing import NamedTuple

from server.core.codes import labels
from server.words.spoken import say


class Slip(NamedTuple):
    """A slip as any printer can print it."""

    heading: str
    shown: str  # the code for people; "" where the sensor has no label
    address: str  # the text of its QR symbol; "" where there is none
    lines: list[str]
    shop: str = ""  # at its head; "" where none was given


def of_unit(unit: dict, base: str, shop: str = "") -> tuple[Slip, str] | None:
    """Returns the slip of a unit's latest decision, from its view in words, and that entry; else None."""
    decided = [each for each in unit["returns"] if each["decision"]]
    if not decided:
        return None
    entry = decided[-1]
    made = entry["decision"]
    code = unit["code"] or entry["code"]
    part, serial = entry["part"] or unit["part"], entry["serial"] or unit["serial"]
    why = made["overrule"] or ", ".join(made["about"])
    moment = datetime.fromtimestamp(made["at"] / 1000).astimezone().strftime("%Y-%m-%d %H:%M")
    lines = [
        say("slips-part", part=part) if part else "",
        say("slips-serial", serial=serial) if serial else "",
        say("slips-why", why=why) if why else "",
        say("slips-signed", name=made["signed"], moment=moment),
    ]
    plain, _, host = code.partition("@")
    slip = Slip(
        made["past"],
        labels.shown(plain) if code else "",
        labels.address(plain, f"http://{host}" if host else base) if code else "",
        [line for line in lines if line],
        shop,
    )
    return slip, made["event"]
