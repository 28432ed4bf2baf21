"""What the figures of a job rest on: shown with a default, changed, set back; nothing moves by itself."""

import pytest

from server.core.evidence import priors
from server.core.infer.case import RATES
from server.core.parts.parking_sensor import PARKING_SENSOR
from tests.core.driver import Driver
from tests.core.driver import Refused
from tests.core.driver import home
from tests.said import english

OUTER, INNER = "rear-right-outer", "rear-right-inner"


@pytest.fixture
def job(core):
    """A job after a baseline fault at right outer."""
    job = Driver(core).begin()
    job.test(OUTER)
    return job


def assumed(job):
    return job.core("assumptions", job=job.job)


def rate(job, name):
    return next(entry for entry in assumed(job)["rates"] if entry["id"] == name)


def chance(job, cause):
    found = {e["cause"]: e["probability"] / 1e9 for e in job.core("reasoned", job=job.job)["causes"]}
    return found[cause]


def test_every_rate_is_shown_with_its_meaning_and_its_default(job):
    told = assumed(job)
    # What a test straight after another is worth is for faults that come and go (test_provoked.py).
    heard = {name for name in RATES if name.startswith("tick_")}
    assert {entry["id"] for entry in told["rates"]} == set(RATES) - {"again"} - heard
    job.fact("listened", ticks=[], silent=[OUTER])
    assert {entry["id"] for entry in assumed(job)["rates"]} == set(RATES) - {"again"}
    unit = rate(job, "unit")
    assert unit["words"] == "A sensor is bad, before any test"
    assert (unit["default_words"], unit["value_words"], unit["changed"]) == ("5 %", "5 %", False)
    assert rate(job, "circuit")["default_words"] == "0.5 %"
    assert told["confidence"]["value_words"] == "95 %"
    assert all(entry["source"] == "common practice, no source" for entry in told["rates"])


def test_a_changed_rate_moves_the_figures_and_is_set_back(job):
    before = chance(job, "unit:" + home(OUTER))
    job.fact("rates_set", rates_ppm={"unit": 10000}, confidence_ppm=0)
    shown = rate(job, "unit")
    assert (shown["value_words"], shown["changed"]) == ("1 %", True)
    assert chance(job, "unit:" + home(OUTER)) < before
    job.record(*shown["reset"])
    assert rate(job, "unit")["changed"] is False
    assert chance(job, "unit:" + home(OUTER)) == before


def test_setting_one_rate_back_keeps_the_others(job):
    job.fact("rates_set", rates_ppm={"unit": 10000, "shows": 800000}, confidence_ppm=990000)
    job.record(*rate(job, "unit")["reset"])
    assert rate(job, "shows")["value_words"] == "80 %"
    assert assumed(job)["confidence"]["value_words"] == "99 %"
    job.record(*assumed(job)["confidence"]["reset"])
    assert assumed(job)["confidence"]["changed"] is False
    assert rate(job, "shows")["changed"] is True


@pytest.mark.parametrize(
    ("rates", "word"),
    [
        ({"shows": 0}, "above 0 %"),
        ({"false_alarm": 1000000}, "below 100 %"),
        ({"luck": 5}, "no assumption called luck"),
    ],
)
def test_what_no_rate_can_be_is_refused_and_does_no_harm_once_on_record(job, rates, word):
    before = chance(job, "unit:" + home(OUTER))
    stop = job.check({"kind": "rates_set", "data": {"rates_ppm": rates, "confidence_ppm": 0}})
    assert stop["rule"] == "rates"
    assert word in stop["sentence"] + stop["do"]
    job.force("rates_set", rates_ppm=rates, confidence_ppm=0)
    assert chance(job, "unit:" + home(OUTER)) == before


# --- failure types of codes


def coded(core, failure_type, code="C1A01"):
    job = Driver(core).begin()
    job.test(OUTER, codes=[{"position": OUTER, "code": code, "failure_type": failure_type}])
    return job


def times(chance_now, chance_before):
    return (chance_now / (1 - chance_now)) / (chance_before / (1 - chance_before))


@pytest.mark.parametrize(
    ("failure_type", "cause", "factor"),
    [
        pytest.param("13", "circuit:" + OUTER, 3, id="open"),
        pytest.param("11", "circuit:" + OUTER, 3, id="short"),
        pytest.param("1A", "circuit:" + OUTER, 3, id="electrical, not further known"),
        pytest.param("96", "unit:" + home(OUTER), 3, id="inside"),
        pytest.param("97", "blocked:" + OUTER, 5, id="blocked"),
    ],
)
def test_a_failure_type_speaks_for_its_cause(core, failure_type, cause, factor):
    """By hand: of five causes behind one faulted reading each other keeps its prior, this one's odds grow.

    With one reading the posterior odds of a cause against 'not this cause' grow by exactly the factor,
    because P(reading | cause) and P(reading | not this cause) stay what they are.
    """
    plain = Driver(core).begin()
    plain.test(OUTER)
    before = chance(plain, cause)
    core("reset", events=[])
    after = chance(coded(core, failure_type), cause)
    assert times(after, before) == pytest.approx(factor, rel=1e-6)


@pytest.mark.parametrize("failure_type", ["", "00", "1F", "62", "zz"])
def test_other_failure_types_say_nothing_of_the_cause(core, failure_type):
    assert assumed(coded(core, failure_type))["codes"] == []


def test_what_a_code_does_is_shown_with_its_source_and_switched_off(core):
    job = coded(core, "13")
    with_it = chance(job, "circuit:" + OUTER)
    shown = assumed(job)["codes"][0]
    assert shown["sentence"] == (
        "C1A01-13 at right outer: open circuit, so a fault in the wiring is 3 times as likely."
    )
    assert "from memory" in shown["source"]
    assert "common practice, no source" in shown["source"]
    assert shown["on"] is True
    job.record(*shown["events"])
    assert assumed(job)["codes"][0]["on"] is False
    assert chance(job, "circuit:" + OUTER) < with_it
    said = [entry["sentence"] for entry in job.view()["history"]]
    assert "The failure type of the code at right outer does not count towards the cause." in said
    job.record(*assumed(job)["codes"][0]["events"])
    assert chance(job, "circuit:" + OUTER) == with_it


def test_the_openly_explained_group_says_so_and_single_types_are_from_memory():
    assert "openly explained" in english(priors.meaning("1B", PARKING_SENSOR)["source"])
    for each in ("11", "13", "96", "97"):
        assert "from memory" in english(priors.meaning(each, PARKING_SENSOR)["source"])


def test_the_same_code_in_a_second_test_is_no_second_evidence(core):
    job = coded(core, "13")
    once = job.core("reasoned", job=job.job)
    assert len(assumed(job)["codes"]) == 1
    job.test(OUTER, codes=[{"position": OUTER, "code": "C1A01", "failure_type": "13"}])
    assert len(assumed(job)["codes"]) == 1
    assert once != job.core("reasoned", job=job.job), "the reading itself counts"


def test_a_code_of_a_test_that_nobody_heard_says_nothing(core):
    job = Driver(core).begin()
    job.test(OUTER, heard=False, codes=[{"position": OUTER, "code": "C1A01", "failure_type": "13"}])
    assert assumed(job)["codes"] == []


def test_a_code_is_about_the_sensor_that_sat_there(core):
    job = coded(core, "96")
    job.photograph()
    job.exchange(rear_right_outer=home(INNER), rear_right_inner=home(OUTER))
    job.test(INNER)
    assert [entry["position"] for entry in assumed(job)["codes"]] == [OUTER]
    assert chance(job, "unit:" + home(OUTER)) > 0.95


# --- a fault that comes and goes


def follows(job, *more):
    """Exchange right outer and right inner; the fault goes with the sensor, then `more` repeats."""
    job.photograph()
    job.exchange(rear_right_outer=home(INNER), rear_right_inner=home(OUTER))
    job.test(INNER)
    for shown in more:
        job.test(*([INNER] if shown else []))
    return job


def test_the_shows_rate_is_estimated_from_repeats_and_offered_beside_the_default(job):
    """k = 1 of n = 3 repeats: (1 + 1) / (3 + 2) = 0.4, the mean of Beta(2, 3)."""
    job.fact("comes_and_goes_set", value=True)
    follows(job, True, False, False)
    job.fact("rates_set", rates_ppm={}, confidence_ppm=500000)
    assert job.view()["reasoning"]["verdict"][0]["cause"] == "unit:" + home(OUTER)
    offered = assumed(job)["comes_and_goes"]["estimate"]
    assert offered["sentence"] == (
        "It showed in 1 of 3 tests that were run again with nothing changed. "
        "That makes 40 %; the default is 50 %."
    )
    assert offered["source"] == "Laplace's rule of succession: (k + 1) / (n + 2)."
    assert offered["used"] is False
    assert rate(job, "shows")["value_words"] == "50 %", "never silently"
    job.record(*offered["events"])
    assert rate(job, "shows")["value_words"] == "40 %"
    assert assumed(job)["comes_and_goes"]["estimate"]["used"] is True
    job.record(*rate(job, "shows")["reset"])
    assert rate(job, "shows")["value_words"] == "50 %"


def test_one_repeat_is_too_little_to_estimate_from(job):
    assert assumed(follows(job, True))["comes_and_goes"]["estimate"] is None


def test_without_a_verdict_nobody_knows_that_the_fault_was_there(job):
    job.test(OUTER)
    job.test(OUTER)
    assert job.view()["reasoning"]["verdict"] is None
    assert assumed(job)["comes_and_goes"]["estimate"] is None


def test_a_test_after_cleaning_is_no_repeat(job):
    follows(job, True, True)
    assert assumed(job)["comes_and_goes"]["estimate"]["sentence"].startswith("It showed in 2 of 2")
    job.fact("cleaned", position=INNER, note="")
    job.test(INNER)
    assert assumed(job)["comes_and_goes"]["estimate"]["sentence"].startswith("It showed in 2 of 2")


def test_coming_and_going_is_switched_here(job):
    job.record(*assumed(job)["comes_and_goes"]["events"])
    assert assumed(job)["comes_and_goes"]["value"] is True
    assert rate(job, "shows")["value_words"] == "50 %"


# --- reach and money


def test_the_reach_of_a_position_is_set_and_counts_in_the_minutes(job):
    job.photograph()
    before = job.core("job", job=job.job)["moves"]
    job.fact("reach_set", position=OUTER, minutes=40)
    reach = {p["id"]: p["reach_minutes"] for p in job.view()["board"]["positions"]}
    assert reach[OUTER] == 40
    assert reach[INNER] == 3
    assert job.core("job", job=job.job)["moves"] != before
    assert job.view()["history"][0]["sentence"] == "Right outer: 40 minutes until a hand is on it."


def test_the_next_job_on_the_vehicle_starts_from_the_reach_that_was_set(job):
    job.fact("reach_set", position=OUTER, minutes=12)
    known = job.core("vehicles")[0]["positions"]
    assert next(p for p in known if p["id"] == OUTER)["reach_minutes"] == 12


def test_a_reach_beyond_a_working_day_is_refused(job):
    with pytest.raises(Refused) as caught:
        job.fact("reach_set", position=OUTER, minutes=601)
    assert "600" in caught.value.refusal["do"]


def test_facts_of_other_phones_that_are_out_of_range_do_no_harm(job):
    job.force("reach_set", position=OUTER, minutes=10**9)
    job.force("money_set", labour_per_hour=10**12, part_price=1, wrong_purchase=0)
    assert job.view()["moves"]
    too_much = {"labour_per_hour": 10**12, "part_price": 0, "wrong_purchase": 0}
    assert job.check({"kind": "money_set", "data": too_much})["rule"] == "rates"


def test_money_is_optional_and_kept_in_minor_units(job):
    assert [entry["value"] for entry in assumed(job)["money"]] == [0, 0, 0]
    job.photograph()
    plain = job.view()["moves"]
    job.fact("money_set", labour_per_hour=9000, part_price=4500, wrong_purchase=0)
    told = {entry["id"]: entry["value"] for entry in assumed(job)["money"]}
    assert told == {"labour_per_hour": 9000, "part_price": 4500, "wrong_purchase": 0}
    assert job.view()["moves"]
    job.fact("money_set", labour_per_hour=0, part_price=0, wrong_purchase=0)
    assert job.view()["moves"] == plain
