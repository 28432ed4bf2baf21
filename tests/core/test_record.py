"""A record folded by itself, held against what was concluded where it was made: the same in both hosts."""

import pytest

from server.core.record.comparison import stand_ins
from tests.core.driver import JOB
from tests.core.driver import Driver
from tests.core.driver import home

OUTER, INNER = "rear-right-outer", "rear-right-inner"


@pytest.fixture
def driver(core):
    """A job whose fault followed its sensor."""
    driver = Driver(core).begin()
    driver.test(OUTER)
    driver.photograph()
    driver.exchange(rear_right_outer=home(INNER), rear_right_inner=home(OUTER))
    driver.test(INNER)
    return driver


def test_what_is_concluded_of_a_sensor_and_its_job_is_told_in_short(core, driver):
    told = core("record_told", unit=home(OUTER), jobs=[JOB])
    assert told["jobs"][JOB]["sentence"].startswith("The fault followed sensor ")
    assert told["jobs"][JOB]["probability"] == driver.view()["reasoning"]["probability"]
    assert (told["unit"]["place"], told["unit"]["disputed"]) == ("fitted", False)
    assert [(test["n"], test["mark"]) for test in told["unit"]["tests"]] == [(1, "fault"), (2, "fault")]
    assert core("record_told", unit="", jobs=[JOB])["unit"] is None


def test_folded_by_itself_it_comes_to_the_same(core, driver):
    told = core("record_told", unit=home(OUTER), jobs=[JOB])
    core("reset", events=[{"event": event} for event in driver.events])
    shown = core("record", unit=home(OUTER), jobs=[JOB], told=told, elsewhere=[])
    assert shown["unit"]["id"] == home(OUTER)
    assert shown["where"] == "By this record it is fitted at right inner."
    assert [job["id"] for job in shown["jobs"]] == [JOB]
    assert shown["compared"] == {
        "same": True,
        "sentence": "Worked out again here from these entries alone, it comes to the same.",
        "differs": [],
        "elsewhere": "",
    }


def test_what_reads_otherwise_is_said_with_both_readings(core, driver):
    told = core("record_told", unit=home(OUTER), jobs=[JOB])
    told["unit"]["serial"] = "0815"
    told["unit"]["elsewhere"] = "It was found bad on Red van."
    told["jobs"][JOB].update(sentence="Not settled yet.", probability=None, clear=400_000_000)
    compared = core("record", unit=home(OUTER), jobs=[JOB], told=told, elsewhere=[])["compared"]
    assert not compared["same"]
    assert compared["sentence"].endswith("Other work that is not in this file counted there.")
    other = core("record", unit=home(OUTER), jobs=[JOB], told=told, elsewhere=[], same_core=False)["compared"]
    assert "another version of this app was used" in other["sentence"]
    assert compared["differs"][:2] == ["Its serial.", "What it did elsewhere."]
    said = compared["differs"][2]
    assert said.startswith(
        "Blue estate: there it said: Not settled yet. (Nothing is left to fix: 40 % sure.) "
        "Here it says: The fault followed sensor "
    )


def test_a_job_without_a_test_reads_as_that(core):
    driver = Driver(core).open()
    told = {"unit": None, "jobs": {JOB: {"sentence": "It is.", "probability": 980_000_000, "clear": 0}}}
    [said] = core("record", unit="", jobs=[driver.job], told=told, elsewhere=[])["compared"]["differs"]
    assert said == (
        "Blue estate: there it said: It is. (98.0 % sure; nothing is left to fix: under 0.1 % sure.) "
        "Here it says: No test."
    )


def test_a_sensor_from_other_work_is_introduced_and_named(core, driver):
    spare = {
        "unit": "u0000000000aa",
        "code": driver.codes[9],
        "part": "PS-1",
        "serial": "7",
        "place": "stock",
    }
    bare = {**spare, "unit": "u0000000000bb", "code": "", "place": "out"}
    made = stand_ins([spare, bare])
    core("reset", events=[{"event": event} for event in made + driver.events])
    shown = core("unit", unit="u0000000000aa")
    assert (shown["part"], shown["serial"], shown["where"]) == ("PS-1", "7", "in your stock")
    view = core("record", unit="u0000000000aa", jobs=[], told={"unit": None, "jobs": {}}, elsewhere=[])
    assert view["where"] == "By this record it is in their stock."
    assert core("conflicts") == {"conflicts": [], "not_understood": []}
    told = core("record_told", unit="", jobs=[JOB])
    said = core("record", unit="", jobs=[JOB], told=told, elsewhere=[spare, bare])["compared"]["elsewhere"]
    code = driver.codes[9][:3] + "-" + driver.codes[9][3:]
    assert said == f"{code} and a sensor without a label came from other work, which is not in this file."
