"""A move pulls first what it needs from elsewhere, and what came to sit in its way meanwhile."""

import pytest

from tests.core.driver import Driver
from tests.core.driver import home

OUTER, INNER = "rear-right-outer", "rear-right-inner"


def test_a_sensor_whose_old_place_stays_empty_is_pulled_before_it_is_fitted(core):
    job = Driver(core).begin()
    job.test(OUTER)
    job.fact("unit_pulled", unit=home(OUTER), position=OUTER, how="tapped")
    job.fact("unit_labelled", unit=home(OUTER), code=job.label_of(home(OUTER)), how="scanned")
    job.fact("unit_moved", unit=home(OUTER), place="scrapped", how="tapped", note="")
    job.fact("move_started", move="home", fitted={OUTER: home(INNER)}, position="", reason="")
    assert job.step()["expects"]["do"] == "pull"
    assert job.step()["expects"]["position"] == INNER
    job.guided()
    assert job.core("state")["vehicles"]["v1"]["holds"][OUTER] == home(INNER)


@pytest.mark.parametrize(
    ("read", "there", "steps"),
    [
        (home(INNER), OUTER, [("pull", home(INNER), OUTER), ("fit", "unew", OUTER)]),
        # What sat there by the record lies in the hand without a label: it gets one before a pull.
        ("unew", INNER, [("pull", home(INNER), INNER), ("pull", "unew", INNER), ("fit", "unew", OUTER)]),
    ],
    ids=["another in its place", "the new one elsewhere"],
)
def test_what_is_found_in_the_way_of_a_replacement_is_pulled_before_the_new_one_is_fitted(
    core, read, there, steps
):
    job = Driver(core).begin()
    job.test(OUTER)
    job.fact("unit_added", **new_unit(job))
    job.fact("move_started", move="replace", fitted={OUTER: "unew"}, position=OUTER, reason="")
    job.scan_wanted()
    assert job.step()["id"] == "fit"

    # The other phone reads a label there.
    job.force("unit_seen", unit=read, place="fitted", position=there, how="scanned", settles=["-"])

    gone_through = []
    while job.step()["form"] == "scan" and len(gone_through) < len(steps):
        expects = job.step()["expects"]
        gone_through.append((expects["do"], expects["unit"], expects["position"]))
        job.scan(job.label_of(expects["unit"]), how="typed")
    assert gone_through == steps
    assert job.core("state")["vehicles"]["v1"]["holds"][OUTER] == "unew"
    assert job.step()["id"] == "seat"


def new_unit(job):
    """Return the facts of a new sensor in the hand."""
    code = job.label_of("unew")
    return {"unit": "unew", "part": "PS-1", "serial": "", "how": "scanned", "code": code, "place": "out"}


def test_a_label_read_for_a_fitting_that_another_phone_has_done_is_refused_in_words(core):
    job = Driver(core).begin()
    job.test(OUTER)
    job.fact("unit_added", **new_unit(job))
    job.fact("move_started", move="replace", fitted={OUTER: "unew"}, position=OUTER, reason="")
    job.scan_wanted()
    expects = {name: job.step()["expects"][name] for name in ("do", "unit", "position")}
    job.force("unit_fitted", unit="unew", position=OUTER, how="scanned", override="", hanging=True)

    asked = {"job": job.job, "text": job.label_of("unew"), "how": "typed"}
    said = core("scan", expects=expects, **asked)

    assert said["outcome"] == "ours"
    assert job.check(*said["events"])["rule"] == "one_place"
    # What is on no record any more is asked about as the step now says.
    gone = core("scan", expects={**expects, "unit": "ugone"}, **asked)
    assert gone == core("scan", **asked)


LEFT = "rear-left-outer"


def pulled_bare(job, position):
    """Pull a sensor whose label is torn off in the hand."""
    code = job.label_of(home(position))
    job.fact("unit_pulled", unit=home(position), position=position, how="tapped")
    job.fact("unit_labelled", unit=home(position), code=code, how="scanned")
    job.fact("label_voided", unit=home(position), code=code, reason="torn")
    job.labels["torn"] = job.labels.pop(home(position))


def test_a_sensor_that_lost_its_label_in_the_hand_is_labelled_before_it_goes_elsewhere(core):
    """It was to be fitted last: each pull before was offered and then refused."""
    job = Driver(core).begin()
    job.test(OUTER)
    pulled_bare(job, LEFT)
    job.fact("move_started", move="exchange", fitted={OUTER: home(LEFT)}, position="", reason="")
    step = job.step()
    assert (step["title"], step["expects"]["may_write"]) == ("Label the sensor from left outer", True)
    job.guided()
    assert job.core("state")["vehicles"]["v1"]["holds"][OUTER] == home(LEFT)


def test_a_new_sensor_that_lost_its_label_in_the_hand_gets_another(core):
    job = Driver(core).begin()
    job.test(OUTER)
    job.fact("unit_added", **new_unit(job))
    job.fact("move_started", move="replace", fitted={OUTER: "unew"}, position=OUTER, reason="")
    job.scan_wanted()
    job.fact("label_voided", unit="unew", code=job.labels["unew"], reason="torn")
    job.labels["torn"] = job.labels.pop("unew")
    assert job.step()["title"] == "Label the sensor in your hand"
    taken = job.scan(job.labels[home(OUTER)])
    assert taken["outcome"] == "stop"
    assert taken["more"] == "Take a fresh label for the sensor in your hand."
    assert job.scan(job.label_of("unew"))["sentence"].startswith("The sensor in your hand is now ")
    job.guided()
    assert job.core("state")["vehicles"]["v1"]["holds"][OUTER] == "unew"


def test_a_sensor_without_a_label_in_the_hand_is_no_reason_to_ask_for_a_new_one(core):
    """Its own place is taken, another is empty: it is labelled, and may come there."""
    job = Driver(core).begin()
    job.test(OUTER)
    job.force("unit_seen", unit=home(INNER), place="fitted", position=LEFT, how="scanned", settles=[])
    assert job.core("state")["units"][home(LEFT)]["place"] == "out"
    assert job.step()["title"] == "Label the sensor from left outer"
    job.scan_wanted()
    assert job.step()["id"] == "fill"
    assert len(job.step()["choices"]) == 1
