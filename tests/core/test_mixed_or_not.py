"""One phone says that sensors got mixed up, the other went on as planned: one question settles it."""

import pytest

from tests.core.driver import Driver
from tests.core.driver import home

OUTER, INNER = "rear-right-outer", "rear-right-inner"
MARA, BEN = "d00000000000000a1", "d00000000000000b1"
YES, NO = "Yes, they got mixed up", "No: each is where it was put"


def with_both_in_the_hand(core):
    """Return the phone of Mara, who has pulled both for an exchange."""
    mara = Driver(core, device=MARA).begin()
    mara.test(OUTER)
    mara.photograph()
    mara.start_exchange()
    for _ in range(2):
        mara.scan_wanted()
    return mara


def told_apart(core, mixed_first):
    """Both are in the hand; Mara says that they got mixed up, Ben fits them as planned and tests."""
    mara = with_both_in_the_hand(core)
    begun = list(mara.events)
    mara.fact("units_mixed", units=[home(OUTER), home(INNER)], note="")
    for _ in range(2):
        mara.scan_wanted()
    mixed = mara.events[len(begun) :]
    core("reset", events=[{"event": event} for event in begun])
    ben = Driver(core, device=BEN, actor="Ben")
    ben.labels = mara.labels
    ben.guided()
    ben.test(INNER, knows=ben.view()["knows"])
    log = begun + (mixed + ben.events if mixed_first else ben.events + mixed)
    core("reset", events=[{"event": event} for event in log])
    return mara


@pytest.fixture(params=[True, False], ids=["the mix-up came first", "the fitting came first"])
def apart(core, request):
    return told_apart(core, request.param)


def settle(phone, words):
    """Tap an answer of the card."""
    phone.record(*next(each for each in phone.step()["choices"] if each["words"] == words)["events"])


def test_it_is_asked_once_and_no_label_is_wanted(apart):
    """Seen: each label was stopped, the old ones as mixed up, the fresh ones as not asked for."""
    step = apart.step()
    names = " and ".join(
        f"{code[:3]}-{code[3:]}" for code in (apart.labels[home(INNER)], apart.labels[home(OUTER)])
    )
    assert (step["form"], step["title"]) == ("contradiction", f"Did {names} get mixed up?")
    assert (step["progress"], step["action"], step["expects"]["units"]) == (None, None, [])
    assert step["expects"]["waits"] == "Test 2 counts once this is settled."
    assert sorted(each["actor"] for each in step["expects"]["stories"]) == ["Ben", "Ben", "Mara"]
    assert [each["words"] for each in step["choices"]] == [YES, NO]
    card = apart.core("unit", unit=home(OUTER))["settle"]
    assert (card["title"], card["others"]) == (step["title"], [])


def test_if_they_did_what_was_fitted_does_not_count_and_they_are_fitted_anew(apart):
    settle(apart, YES)
    view = apart.view()
    assert (view["disputes"], view["step"]["id"]) == ([], "mixed.fit")
    assert len(view["out"]) == 2
    assert view["reasoning"]["verdict"] is None


def test_if_they_did_not_each_is_where_it_was_fitted_and_the_fresh_labels_go(apart):
    settle(apart, NO)
    view = apart.view()
    assert (view["disputes"], view["out"], view["mixed"]) == ([], [], [])
    assert [each["cause"] for each in view["reasoning"]["verdict"]] == [f"unit:{home(OUTER)}"]
    assert sorted(apart.core("state")["codes"].values()) == [home(INNER), home(OUTER)]


def test_once_they_were_fitted_by_their_fresh_labels_nobody_says_that_nothing_happened(core):
    mara = told_apart(core, mixed_first=True)
    body = core("state")["mixed"][0]["bodies"][0]
    mara.force("unit_moved", unit=body, place="stock", how="scanned", note="")
    assert [each["words"] for each in mara.step()["choices"]] == [YES]
    settle(mara, YES)
    assert mara.step()["form"] != "contradiction"


def test_two_phones_that_say_the_same_are_asked_once_and_the_labels_of_one_stay(core):
    """Each put labels of its own on them: whose are on them, one answer says."""
    mara = with_both_in_the_hand(core)
    begun, log = list(mara.events), list(mara.events)
    ben = Driver(core, device=BEN, actor="Ben")
    ben.labels = mara.labels
    for phone in (mara, ben):
        core("reset", events=[{"event": event} for event in begun])
        phone.fact("units_mixed", units=[home(OUTER), home(INNER)], note="")
        for _ in range(2):
            phone.scan_wanted()
        log += [event for event in phone.events if event not in begun]
    core("reset", events=[{"event": event} for event in log])
    settle(mara, YES)
    view = mara.view()
    assert (view["disputes"], view["step"]["id"], len(view["out"])) == ([], "mixed.fit", 2)
