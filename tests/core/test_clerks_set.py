"""The judgement of the clerk's set: 120 returns, no wrong accept and no wrong refusal."""

from collections import Counter

from tests.clerks_set import DECISIONS
from tests.clerks_set import HOST
from tests.clerks_set import PART
from tests.clerks_set import RETURNS
from tests.clerks_set import WAYS
from tests.clerks_set import WRONG
from tests.clerks_set import ClerksSet
from tests.clerks_set import phone_of
from tests.core.counter_yard import NOW
from tests.core.counter_yard import Clerk
from tests.core.counter_yard import said
from tests.hosts import Core

_OTHER = "ddddddddddddddd01"


def test_the_set_is_as_large_and_as_wrong_as_it_says():
    shown = ClerksSet(NOW).shown
    assert (len(shown), len({each.number for each in shown})) == (RETURNS, RETURNS)
    ways = Counter(each.wrong for each in shown if each.wrong)
    assert (sum(ways.values()), dict(ways)) == (WRONG, dict.fromkeys(WAYS, 2))


def test_none_of_120_returns_is_accepted_or_refused_wrongly():
    core, the_set = Core(), ClerksSet(NOW)
    core("add", events=[{"event": entry["event"]} for entry in the_set.entries])
    clerk, other = Clerk(core), Clerk(core, device=_OTHER, name="Ada")
    wrong = {said: [] for said in (*DECISIONS.values(), "wrong holds")}
    for each in the_set.shown:
        proposed = judged(clerk, other, each)
        if proposed != (each.proposed or "refuse"):
            wrong[DECISIONS.get(proposed, "wrong holds")].append((each, proposed))
    assert not any(wrong.values()), wrong
    assert core("conflicts")["conflicts"] != [], "of the two counters"
    for each in the_set.shown:
        if each.wrong == "two counters offline":
            again = ask(clerk, each)
            assert again["proposed"] == "refuse"
            assert "Two counters decided" in said(again, "before")


def ask(clerk, each, **read):
    fault = {"device": phone_of(each.number), "seq": 4, "what": "changed"}
    return clerk.ask(
        each.label,
        host=HOST,
        read={"part": PART if each.serial else "", "serial": each.serial, "compared": "", **read},
        record=[fault] if each.wrong == "altered record" else [],
    )


def judged(clerk, other, each):
    """Return what is proposed in the end, and decide so; other people do meanwhile what they do."""
    if each.wrong == "handover taken back":
        back = {"device": phone_of(each.number), "seq": 1, "reason": "slip"}
        assert clerk.check({"kind": "corrected", "data": back, "role": "counter"})["rule"] == "role"
    answer, unknowing = ask(clerk, each), ask(other, each)
    if each.compared and answer["proposed"] == "hold":
        answer = ask(clerk, each, compared=each.compared)
    if each.wrong == "lingering label":
        return answer["proposed"]  # were it taken for a new event, it would still be no second accept
    clerk.decide(answer)
    if each.wrong == "two counters offline":
        other.force("return_received", **unknowing["received"]["data"])
        other.force("return_decided", **{**unknowing["decisions"][0]["events"][0]["data"], "signed": "Ada"})
    return answer["proposed"]
