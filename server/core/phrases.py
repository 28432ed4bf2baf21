"""Figures and lists as people read them: the small pieces of sentences, in every room the same."""


def percent(ppb: int) -> str:
    """Return a probability (parts per billion) as people read it.

    Whole percent; one decimal above 95, just below it, and below 5, where it matters; never a false
    0, 95 or 100.
    """
    if ppb > 999500000:
        return "over 99.9 %"
    if ppb < 500000:
        return "under 0.1 %"
    tenths = (ppb + 500000) // 1000000
    if 945000000 <= ppb < 950000000:
        # Never 95 for what does not reach it: that is where a verdict begins.
        tenths = ppb // 1000000
    elif 50 <= tenths <= 950:
        return "{} %".format((ppb + 5000000) // 10000000)
    return "{}.{} %".format(tenths // 10, tenths % 10)


def minutes(hundredths: int) -> str:
    """Return a duration given in hundredths of a minute, rounded to whole minutes."""
    return counted((hundredths + 50) // 100, "minute")


def counted(number: int, word: str) -> str:
    """Return '1 day' or '3 days'."""
    return "1 {}".format(word) if number == 1 else "{} {}s".format(number, word)


def listed(items: list, last: str = " and ") -> str:
    """Return 'a', 'a and b' or 'a, b and c'; `last` stands before the last one."""
    if len(items) < 2:
        return "".join(items)
    return ", ".join(items[:-1]) + last + items[-1]


def sentence_case(text: str) -> str:
    """Return `text` with its first letter in upper case."""
    return text[:1].upper() + text[1:]
