"""What a person reads, as an id and arguments: the words stand in `server/words/`, in every language.

A message is {"msg": id, "args": {name: value}}. A value is text that stays as it is (a code, what a person
typed), an integer (a count), another message, or a figure {"figure": kind, "of": value}. Messages are
compared by ids, never as text.
"""


def message(msg: str, **args) -> dict:
    """Return a message; `args` are named as in the Fluent files."""
    return {"msg": msg, "args": args}


def percent(ppb: int) -> dict:
    """Return a probability in parts per billion, to be written as a percentage."""
    return _figure("percent", ppb)


def minutes(hundredths: int) -> dict:
    """Return a duration given in hundredths of a minute, to be written in whole minutes."""
    return message("figures-minutes", count=(hundredths + 50) // 100)


def decimal(units: int, places: int) -> dict:
    """Return `units` of 10 to the minus `places`: (1205, 2) is 12.05."""
    return _figure("decimal", [units, places])


def all_of(items: list) -> dict:
    """Return a list joined by 'and'; empty texts in it are left out."""
    return _figure("and", items)


def also_all_of(items: list) -> dict:
    """Return a list some items of which are lists themselves: 'a and b, and c'."""
    return _figure("also", items)


def any_of(items: list) -> dict:
    """Return a list joined by 'or'; empty texts in it are left out."""
    return _figure("or", items)


def sentences(items: list) -> dict:
    """Return whole sentences, one after the other; empty ones are left out."""
    return _figure("sentences", items)


def _figure(kind: str, of) -> dict:
    return {"figure": kind, "of": of}
