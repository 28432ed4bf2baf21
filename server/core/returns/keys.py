"""By what a return is found again at another counter of the chain: label and host, and serial number.

Each is a text that says which it is: "label AAAAA yard.example", "serial S100".
"""

from ..codes.numbers import plain
from ..codes.numbers import tells_apart
from ..facts.labelling import carried
from ..facts.returns import is_final
from ..state.printed import printed_for
from ..state.serials import serials_of


def keys(state, unit, code: str, serial: str, host: str) -> list[str]:
    """Return the keys of a unit (None where it is on no record here), in order.

    `code` and `serial` are what was read just now, "" where nothing was; `host` is what this counter's own
    labels name. A code from elsewhere names its host itself, as CODE@HOST.
    """
    codes, serials = [code], [serial]
    if unit:
        codes += carried(unit) + unit["old_codes"] + [entry["code"] for entry in unit["returns"]]
        serials += serials_of(unit)
    found = set()
    for each in codes:
        bare, _, elsewhere = each.partition("@")
        if bare:
            for named in (elsewhere or host, "" if elsewhere else printed_for(state, bare)):
                if named:
                    found.add("label {} {}".format(bare, named.lower()))
    for each in serials:
        if tells_apart(each):
            found.add("serial " + plain(each))
    return sorted(found)


def entry(state, unit, host: str) -> dict:
    """Return what the register of the chain has to say of a unit.

    {"keys", "part", "decision", "knowing", "at"}; "decision" is "" where none stands that ends its return,
    "knowing" tells whether who decided knew what other counters had.
    """
    finals = [each["decision"] for each in unit["returns"] if is_final(each)]
    last = finals[-1] if finals else None
    parts = [each["part"] for each in unit["returns"] if each["part"]]
    return {
        "keys": keys(state, unit, "", "", host),
        "part": parts[-1] if parts else unit["part"],
        "decision": last["decision"] if last else "",
        "knowing": last is not None and "others" in last["reasons"],
        "at": last["at"] if last else 0,
    }
