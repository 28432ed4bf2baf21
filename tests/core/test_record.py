"""A record folded by itself, held against what was concluded where it was made: the same in both hosts."""

import pytest

from server.core.messages import all_of
from server.core.messages import decimal
from server.core.messages import message
from server.core.messages import percent
from server.core.messages import sentences
from server.core.record.comparison import stand_ins
from server.core.record.said import is_said
from tests.core.driver import JOB
from tests.core.driver import Driver
from tests.core.driver import home
from tests.said import english

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
    assert told["jobs"][JOB]["sentence"]["msg"] == "evidence-followed"
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
    told["unit"]["elsewhere"]["condemned"] = True
    told["jobs"][JOB].update(sentence="Not settled yet.", probability=None, clear=400_000_000, causes=[])
    compared = core("record", unit=home(OUTER), jobs=[JOB], told=told, elsewhere=[])["compared"]
    assert not compared["same"]
    assert compared["sentence"].endswith("it does not come to what was sealed.")
    other = core("record", unit=home(OUTER), jobs=[JOB], told=told, elsewhere=[], same_core=False)["compared"]
    assert other["sentence"] == compared["sentence"]  # whoever concluded: nothing is explained away
    assert compared["differs"][:2] == [
        "Its serial. There: 0815. Here: nothing.",
        "What it did elsewhere.",
    ]
    said = compared["differs"][2]
    assert said.startswith(
        "Blue estate: there it said: Not settled yet. (Nothing is left to fix: 40 % sure.) "
        "Here it says: The fault followed sensor "
    )


def compared(core, told, **how):
    return core("record", unit=home(OUTER), jobs=[JOB], told=told, elsewhere=[], **how)["compared"]


def test_what_another_version_only_words_otherwise_is_the_same(core, driver):
    told = core("record_told", unit=home(OUTER), jobs=[JOB])
    told["jobs"][JOB]["sentence"] = {"msg": "reasons-of-another-version", "args": {"unit": "K7F-3M"}}
    assert compared(core, told, same_core=False)["same"]
    told["jobs"][JOB]["causes"] = ["circuit:rear-left-outer"]
    assert not compared(core, told, same_core=False)["same"]


def test_a_record_with_its_conclusions_as_text_is_held_against_by_figures_and_codes(core, driver):
    told = core("record_told", unit=home(OUTER), jobs=[JOB])
    told["unit"]["elsewhere"] = "K7F-3M has no test on another job."
    told["unit"]["tests"] = [{**test, "position": "right outer"} for test in told["unit"]["tests"]]
    told["jobs"][JOB]["sentence"] = "It followed its sensor."
    del told["jobs"][JOB]["causes"]
    assert compared(core, told, same_core=False)["same"]
    told["jobs"][JOB]["clear"] = 120_000_000
    [said] = compared(core, told, same_core=False)["differs"]
    assert said.startswith("Blue estate: there it said: It followed its sensor. (")
    told["jobs"][JOB]["clear"] = driver.view()["reasoning"]["clear"]
    told["unit"]["tests"][0]["mark"] = "clean"
    assert compared(core, told, same_core=False)["differs"] == ["Its tests."]


@pytest.mark.parametrize(
    "value",
    [
        "It is.",
        message("no-such-message", unit="K7F-3M", count=3, of=all_of(["a", message("b")])),
        sentences([percent(980_000_000), decimal(1205, 2), {"figure": "moment", "of": 1_764_000_000_000}]),
    ],
)
def test_a_message_of_any_id_can_be_said(value):
    assert is_said(value)
    assert isinstance(english(value), str)


@pytest.mark.parametrize(
    "value",
    [
        None,
        7,
        ["It is."],
        {"msg": "a", "args": []},
        {"msg": "a b", "args": {}},
        {"msg": "a", "args": {}, "more": ""},
        message("a", count=None),
        message("a", count=True),
        message("a", count=1 << 60),
        message("a", unit=[]),
        {"figure": "sort", "of": 1},
        {"figure": "and", "of": "abc"},
        {"figure": "day", "of": 1 << 52},
        {"figure": "moment", "of": "yesterday"},
        decimal(1, 400),
        percent(-1),
    ],
)
def test_what_cannot_be_said_is_no_message(value):
    assert not is_said(value)
    assert not is_said(message("a", inner=value)) or value == 7


def test_a_message_in_a_message_in_a_message_has_an_end():
    value = "K7F-3M"
    for _ in range(40):
        value = message("a", inner=value)
    assert not is_said(value)


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


def test_what_has_no_room_is_told_apart_from_what_is_not_there(core):
    megabyte = 1024 * 1024
    full = core("record_room", sizes=[30 * megabyte, 30 * megabyte, None, megabyte], text=megabyte)
    assert full["fits"] == [True, False, False, True]
    assert 14 * megabyte < full["over"] < 15 * megabyte
    roomy = core("record_room", sizes=[30 * megabyte, None, megabyte], text=megabyte)
    assert roomy["fits"] == [True, False, True]
    assert roomy["over"] < 0
