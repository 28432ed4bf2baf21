"""Spares at Replace: the label of a good one brings it in, a bad one is stopped and is marked."""

import pytest

from tests.core.driver import Driver
from tests.core.driver import Refused
from tests.core.driver import home

OUTER, INNER = "rear-right-outer", "rear-right-inner"
STOCK = "u0000000stock"


def in_stock(job, unit=STOCK, part="PS-1"):
    """Put a spare into stock; return its code."""
    job.labels[unit] = job._fresh()
    data = {"unit": unit, "part": part, "serial": "", "code": job.labels[unit], "how": "scanned"}
    job.fact("unit_added", **data, place="stock")
    return job.labels[unit]


def found_bad(job):
    """Come to the replacement of the sensor of right outer."""
    job.exchange(rear_right_outer=home(INNER), rear_right_inner=home(OUTER))
    job.test(INNER)
    job.test(INNER)
    assert job.step()["id"] == "replace"
    return job


@pytest.fixture
def job(core):
    return Driver(core).faulted()


def seen(job, code, position=INNER):
    return job.core(
        "scan", job=job.job, text=code, how="scanned", expects={"do": "new", "position": position}
    )


def test_the_label_of_a_good_one_in_stock_brings_it_in(job):
    code = in_stock(job)
    answer = seen(found_bad(job), code)
    assert answer["outcome"] == "ours"
    job.record(*answer["events"])
    assert job.core("state")["jobs"][job.job]["move"]["fitted"] == {INNER: STOCK}
    assert job.step()["id"] == "take"


def test_a_fresh_label_is_for_a_new_one_as_ever(job):
    answer = seen(found_bad(job), job._fresh())
    assert (answer["outcome"], answer["unit"], answer["events"]) == ("ours", None, [])


def replaced(job):
    """Replace the bad one by a new one, down to the test; return the code of the bad one."""
    job.new_unit(INNER)
    job.guided()
    job.test()
    return job.labels[home(OUTER)]


def test_a_bad_one_is_stopped_with_its_reason(job):
    code = replaced(found_bad(job))
    answer = seen(job, code)
    assert answer["outcome"] == "stop"
    assert answer["sentence"] == f"{code[:3]}-{code[3:]} was found bad on Blue estate."
    assert answer["more"] == "Take one that is good, or a new one with a fresh label."


def test_one_of_another_part_and_one_that_sits_elsewhere_are_stopped(job):
    other = in_stock(job, part="PS-2")
    found_bad(job)
    assert "has part number PS-2; PS-1 belongs here." in seen(job, other)["sentence"]
    assert "is fitted at right outer" in seen(job, job.labels[home(INNER)])["sentence"]


def test_a_bad_one_that_lies_elsewhere_is_stopped_as_bad_too(job):
    code = replaced(found_bad(job))
    job.fact("unit_moved", unit=home(OUTER), place="counter", how="scanned", note="")
    shown = f"{code[:3]}-{code[3:]}"
    assert seen(job, code)["sentence"] == (
        f"{shown} is at the parts counter. {shown} was found bad on Blue estate."
    )


def test_a_bad_one_goes_into_stock_only_with_a_reason(job):
    replaced(found_bad(job))
    move = {"unit": home(OUTER), "place": "stock", "how": "tapped", "note": ""}
    stopped = job.check({"kind": "unit_moved", "data": move})
    assert stopped["rule"] == "bad_stock"
    assert "was found bad on Blue estate" in stopped["sentence"]
    with pytest.raises(Refused):
        job.fact("unit_moved", **move)
    job.fact("unit_moved", **{**move, "note": "as a dummy for the bench"})
    assert job.core("state")["units"][home(OUTER)]["place"] == "stock"


def test_a_good_one_goes_into_stock_without_a_word(job):
    job.fact("unit_pulled", unit=home(OUTER), position=OUTER, how="tapped")
    job.fact("unit_labelled", unit=home(OUTER), code=job._fresh(), how="scanned")
    data = {"unit": home(OUTER), "place": "stock", "how": "tapped", "note": ""}
    assert job.check({"kind": "unit_moved", "data": data}) is None


def test_each_way_into_stock_asks_why(job):
    replaced(found_bad(job))
    ways = job.view()["ways"]["close"]["settle"][0]["choices"]
    page = job.core("unit", unit=home(OUTER))["next"]["places"]
    for choices in (ways, page):
        asked = {each["events"][0]["data"]["place"]: each["wants"] for each in choices}
        assert asked == {"counter": "", "customer": "", "stock": "note", "scrapped": ""}


def test_it_is_marked_wherever_it_shows(job):
    code = replaced(found_bad(job))
    job.fact("unit_moved", unit=home(OUTER), place="stock", how="tapped", note="as a dummy")
    marked = {each["id"]: each["bad"] for each in job.core("units")}
    assert marked == {**dict.fromkeys(marked, ""), home(OUTER): "found bad on Blue estate"}
    assert job.core("unit", unit=home(OUTER))["bad"] == "found bad on Blue estate"
    listed = {each["id"]: each["bad"] for each in job.view()["units"]}
    assert listed[home(OUTER)] == "found bad on Blue estate"
    (near,) = [
        each for each in job.core("near_labels", text=code[:4], job="")["labels"] if each["code"] == code
    ]
    assert near["bad"] == "found bad on Blue estate"
    (searched,) = job.core("job_list", text=code, stands="", most=5, since=0)["units"]
    assert searched["bad"] == "found bad on Blue estate"
    said = job.core("scan", text=code, how="scanned")["sentence"]
    assert said.endswith("was found bad on Blue estate.")
    offered = [each["events"] for each in seen_choices(job)]
    assert home(OUTER) not in str(offered)


def seen_choices(job):
    job.fact("unit_pulled", unit="u00000000new1", position=INNER, how="tapped")
    job.fact("unit_moved", unit="u00000000new1", place="scrapped", how="tapped", note="")
    assert job.step()["id"] == "fill"
    return job.step()["choices"]


def test_a_part_that_got_mixed_up_and_was_found_bad_counts_as_bad(core):
    job = Driver(core).faulted()
    job.start_exchange(OUTER, INNER)
    for _ in range(2):
        job.scan_wanted()
    job.fact("units_mixed", units=[home(OUTER), home(INNER)], note="")
    while job.step()["id"] == "mixed.label":
        unit = job.step()["expects"]["unit"]
        job.scan(job.label_of(unit))
    job.record(*next(m["events"] for m in job.view()["moves"] if len(m["touches"]) == 2))
    job.guided()
    job.test(INNER)
    job.test(INNER)
    bad = job.core("state")["vehicles"]["v1"]["holds"][INNER]
    code = job.labels[bad]
    job.new_unit(INNER)
    job.guided()
    assert "was found bad on Blue estate" in seen(job, code)["sentence"]


def test_a_suspect_in_the_hand_that_is_convicted_makes_room_for_the_one_that_came_out(job):
    """A bad spare stays faulted where it sits while the suspect is tried elsewhere: nothing went along."""
    in_stock(job)
    job.exchange(rear_right_outer=STOCK)
    job.test(OUTER)
    job.exchange(rear_left_outer=home(OUTER))
    job.test(OUTER, "rear-left-outer")
    own = job.core("unit", unit=home("rear-left-outer"))["shown"]
    (best, *_) = job.view()["moves"]
    assert best["title"] == f"Fit {own}, the one in your hand, at left outer"
    # What comes back to its own place is no spare.
    assert "the one at hand takes its place" in best["reason"]
    job.tap()
    job.guided()
    assert [(each["id"], each["words"]) for each in job.step()["choices"]] == [
        ("still", "Still there: fault at right outer"),
        ("stayed", "Stayed: fault at left outer and right outer"),
        ("gone", "Gone: no fault anywhere"),
        ("not_heard", "Sounder not heard"),
    ]
