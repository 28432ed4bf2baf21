"""One sensor as a scan opens it: its trail over all jobs, who had it, what the tests say, what comes next."""

import pytest

from tests.core.driver import Driver
from tests.core.driver import home
from tests.core.test_unit_history import SPARE
from tests.core.test_unit_history import Yard

OUTER, INNER = "rear-right-outer", "rear-right-inner"


def followed(core):
    """A job whose fault followed the sensor from right outer; it is in hand."""
    job = Driver(core).begin()
    job.test(OUTER)
    job.photograph()
    job.exchange(rear_right_outer=home(INNER), rear_right_inner=home(OUTER))
    job.test(INNER)
    return job


def closed(core):
    """The same, with a new sensor fitted, closed; the bad one is at the counter."""
    job = followed(core)
    job.new_unit(INNER)
    job.guided()
    job.test()
    job.finish()
    return job


def test_what_the_tests_say_is_what_the_job_says(core):
    job = followed(core)
    reasoning = job.view()["reasoning"]
    found = core("unit", unit=home(OUTER))["finding"]
    assert found["standing"] == "bad"
    assert found["sentence"] == reasoning["sentence"]
    assert found["sure"] == f"{reasoning['confidence_words']} sure."
    cleared = core("unit", unit=home(INNER))["finding"]
    assert cleared["standing"] == "cleared"
    assert cleared["sentence"] == f"It was not this sensor. {reasoning['sentence']}"
    assert core("unit", unit=home("rear-left-outer"))["finding"]["standing"] == "cleared"


def test_the_trail_of_a_sensor_shows_its_own_line_and_who_else_sat_there(core):
    job = followed(core)
    seen = core("unit", unit=home(OUTER))
    station, now = seen["trail"]
    assert (station["kind"], station["title"], now["kind"]) == ("job", "Blue estate", "now")
    assert now["words"] == "Fitted at right inner"
    trail = station["trail"]
    assert [row["position"] for row in trail["rows"]] == [INNER, OUTER]
    own, other = trail["lines"]
    assert (own["unit"], own["suspect"]) == (home(OUTER), True)
    assert [(p["position"], p["mark"]) for p in own["points"]] == [(OUTER, "fault"), (INNER, "fault")]
    assert (other["unit"], other["suspect"]) == (home(INNER), False)
    assert [(p["position"], p["mark"]) for p in other["points"]] == [(INNER, "clean"), (OUTER, "clean")]
    assert job.labels[home(OUTER)][:3] in own["shown"]


def test_the_line_of_a_sensor_ends_where_it_left_the_vehicle(core):
    closed(core)
    station, now = core("unit", unit=home(OUTER))["trail"]
    own = station["trail"]["lines"][0]
    assert [point["test"] for point in own["points"]] == [0, 1]
    new = [line for line in station["trail"]["lines"] if line["unit"] == "u00000000new1"]
    assert [point["test"] for point in new[0]["points"]] == [2]
    assert now["words"] == "At the parts counter"


def test_a_spare_has_a_station_for_each_place_and_each_vehicle(core):
    yard = Yard(core)
    yard.job("v1")
    yard.spare()
    yard.fit(SPARE)
    yard.driver.test()
    yard.driver.fact("unit_pulled", unit=SPARE, position=OUTER, how="scanned")
    yard.driver.fact("unit_moved", unit=SPARE, place="stock", how="scanned", note="")
    first = yard.driver.job
    yard.job("v2")
    yard.driver.test(OUTER)
    yard.fit(SPARE)
    yard.driver.test()
    stations = core("unit", unit=SPARE)["trail"]
    assert [(each["kind"], each.get("job") or each["words"]) for each in stations] == [
        ("job", first),
        ("place", "In your stock"),
        ("job", yard.driver.job),
        ("now", "Fitted at right outer"),
    ]
    seen = core("unit", unit=SPARE)
    assert [test["vehicle"] for test in seen["tests"]] == ["Car 1", "Car 2"]
    assert seen["tests_words"] == "2 tests with it: 2 clean."
    assert seen["tests"][1]["sentence"] == "Test 2 on Car 2, at right outer: clean."


def test_each_handover_says_how_the_sensor_was_known(core):
    job = closed(core)
    seen = core("unit", unit=home(OUTER))
    shown = seen["shown"]
    assert [(entry["sentence"], entry["how_words"]) for entry in seen["custody"]] == [
        ("Pulled from right outer of Blue estate", "label put on at once, scanned"),
        (f"Label {shown} put on", "label scanned"),
        ("Fitted at right inner of Blue estate", "label scanned"),
        ("Pulled from right inner of Blue estate", "label scanned"),
        ("Handed to the parts counter", "not scanned"),
    ]
    assert {entry["actor"] for entry in seen["custody"]} == {"Mara"}
    assert seen["custody_words"] == "4 handovers: 3 with its label scanned and 1 without a scan."
    other = core("unit", unit=home(INNER))
    assert other["custody_words"] == "2 handovers, each with its label scanned."
    untouched = core("unit", unit=home("rear-left-outer"))
    assert untouched["custody_words"] == "It has not been moved since it was first seen."
    assert job.view()["closed"]


def test_void_labels_stay_on_its_record_with_the_reason(core):
    job = followed(core)
    old = job.labels[home(OUTER)]
    job.fact("label_voided", unit=home(OUTER), code=old, reason="torn by the catch")
    fresh = job.codes[15]
    job.fact("unit_labelled", unit=home(OUTER), code=fresh, how="typed")
    labels = core("unit", unit=home(OUTER))["labels"]
    assert [(label["code"], label["state"], label["sentence"]) for label in labels] == [
        (old, "void", "Void: torn by the catch."),
        (fresh, "on", "On the sensor now."),
    ]
    assert labels[0]["at"] < labels[0]["void_at"] < labels[1]["at"]


def test_pictures_are_those_of_the_place_while_it_sat_there(core):
    job = followed(core)
    place = {"shows": "position", "position": INNER, "unit": ""}
    file = {"sha256": "cd" * 32, "mime": "image/jpeg", "bytes": 9, "width": 4, "height": 3}
    job.fact("photo_taken", **file, **place)
    of_moved = [photo["words"] for photo in core("unit", unit=home(OUTER))["photos"]]
    assert of_moved == ["At right outer of Blue estate", "At right inner of Blue estate"]
    of_other = [photo["words"] for photo in core("unit", unit=home(INNER))["photos"]]
    assert of_other == ["At right inner of Blue estate"]


def test_what_comes_next_follows_from_where_it_is(core):
    job = followed(core)
    following = core("unit", unit=home(OUTER))["next"]
    assert (following["to"], following["places"]) == ("job", [])
    job.new_unit(INNER)
    job.guided()
    job.test()
    job.finish()
    following = core("unit", unit=home(OUTER), how="scanned")["next"]
    assert following["to"] == "slip"
    assert [place["place"] for place in following["places"]] == ["stock", "customer", "scrapped"]
    assert following["places"][0]["wants"] == "note", "it is bad: why it goes into stock has to be said"
    (fact,) = following["places"][1]["events"]
    assert core("check", events=[{**fact, "job": None, "actor": "Mara"}])["refusal"] is None
    assert fact["data"]["how"] == "scanned"
    assert core("unit", unit=home(INNER))["next"]["to"] == "job"


def test_a_sensor_in_dispute_is_scanned_first(core):
    job = followed(core)
    job.force("unit_moved", unit=home(OUTER), place="stock", how="tapped", note="")
    following = core("unit", unit=home(OUTER))["next"]
    assert (following["to"], following["places"]) == ("find", [])


def test_a_return_is_told_with_its_decision(core):
    job = closed(core)
    unit, code = home(OUTER), job.labels[home(OUTER)]
    job.force("return_received", unit=unit, how="scanned", code=code, part="PS-1", serial="",
              compared="", note="")  # fmt: skip
    (entry,) = core("unit", unit=unit)["returns"]
    assert entry["received"] == "Received at the counter, label scanned. Read off it: part PS-1."
    assert entry["decision"] is None
    job.force("return_decided", unit=unit, decision="accept", proposed="hold", reasons=["custody"],
              overrule="I saw it come off.", signed="Mara")  # fmt: skip
    (entry,) = core("unit", unit=unit)["returns"]
    assert entry["decision"]["sentence"] == (
        "Accepted. The record spoke for: held. Decided otherwise because: I saw it come off."
    )
    assert entry["decision"]["signed"] == "Mara"


@pytest.mark.parametrize(
    ("base", "address"),
    [
        ("http://localhost:8765", "HTTP://LOCALHOST:8765/U/"),
        ("https://yard.example", "HTTPS://YARD.EXAMPLE/U/"),
    ],
)
def test_the_address_of_its_label_is_upper_case_throughout(core, base, address):
    """Only so is the symbol in alphanumeric mode (ISO/IEC 18004, table 5: no lower case in it)."""
    job = followed(core)
    code = job.labels[home(OUTER)]
    seen = core("unit", unit=home(OUTER), base=base)
    assert seen["address"] == address + code
    assert core("code", text=seen["address"], host=base.split("//")[1])["code"] == code
    assert core("unit", unit=home("rear-left-outer"), base=base)["address"] == ""
