"""What each rule of a return is about, in a few words."""

from ..messages import message

# What a rule is about, for lists, search and paper: ids of messages.
ABOUT = {
    "label": "returns-about-label",
    "evidence": "returns-about-evidence",
    "place": "returns-about-place",
    "part": "returns-about-part",
    "serial": "returns-about-serial",
    "verdict": "returns-about-verdict",
    "custody": "returns-about-custody",
    "photos": "returns-about-photos",
    "before": "returns-about-before",
    "others": "returns-about-others",
    "unasked": "returns-about-unasked",
    "record": "returns-about-record",
    "job": "returns-about-job",
    "window": "returns-about-window",
}


def about(rule: str):
    """Return what a rule is about, as a message; the rule itself where it is a later version's."""
    return message(ABOUT[rule]) if rule in ABOUT else rule
