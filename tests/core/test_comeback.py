"""A vehicle that comes back: what was found and done on it before moves the priors of the new job."""

import pytest

from tests.core.brute_force import Enumeration
from tests.core.driver import Driver
from tests.core.driver import Refused
from tests.core.driver import home
from tests.hosts import CoreError
from tests.said import english

OUTER, INNER = "rear-right-outer", "rear-right-inner"
NEW = "u0000000new01"
DAY = 86_400_000
CIRCUIT, BLOCKED = "circuit:" + OUTER, "blocked:" + OUTER


class Yard(Driver):
    """One phone, one vehicle, several jobs; time goes on between them."""

    later = 0

    def envelope(self, kind, data, job="same"):
        event = super().envelope(kind, data, job)
        event["at"] += self.later
        self.prev = self.core("envelope", event=event)["hash"]
        return event

    def come(self, number, days=0):
        """Open the next job after some days, ready for its first test."""
        self.later += days * DAY
        self.job = f"j{number:012}"
        known = self.core("vehicles")
        self.open()
        self.record(*[draft for vehicle in known for draft in vehicle["opens_with"]])
        self.tap()
        self.tap()

    def move(self, unit, place, position):
        """Pull a unit into the hand, or fit one out of it."""
        kind, more = (
            ("unit_fitted", {"override": ""}) if position and place == "fitted" else ("unit_pulled", {})
        )
        self.force(kind, unit=unit, position=position, how="tapped", **more)

    def exchanged(self):
        """Find a fault at right outer, and exchange its sensor with that of right inner."""
        self.test(OUTER)
        self.move(home(OUTER), "out", OUTER)
        self.move(home(INNER), "out", INNER)
        self.move(home(OUTER), "fitted", INNER)
        self.move(home(INNER), "fitted", OUTER)

    def replaced(self):
        """Find the sensor at right outer bad, replace it, prove it, close."""
        self.exchanged()
        self.force_test(INNER)
        self.move(home(OUTER), "out", INNER)
        self.move(home(INNER), "out", OUTER)
        self.move(home(INNER), "fitted", INNER)
        self.force("unit_moved", unit=home(OUTER), place="customer", how="tapped", note="")
        self.force("unit_added", unit=NEW, part="PS-1", serial="", code="", how="tapped", place="out")
        self.move(NEW, "fitted", OUTER)
        self.force_test()
        self.force_test()
        self.force("job_closed", note="")

    def force_test(self, *faulted):
        data = {"heard": True, "faulted": list(faulted), "silent": [], "unplugged": [], "codes": []}
        self.force("test_run", came_and_went=False, note="", **data)

    def chances(self):
        return {
            each["cause"]: each["probability"] / 1e9 for each in self.core("reasoned", job=self.job)["causes"]
        }

    def told(self):
        return self.core("assumptions", job=self.job)["comeback"]


@pytest.fixture
def yard(core):
    return Yard(core)


@pytest.fixture
def back(yard):
    """A vehicle whose sensor at right outer was replaced; it comes back with a fault there after 90 days."""
    yard.come(1)
    yard.replaced()
    yard.come(2, days=90)
    yard.test(OUTER)
    return yard


def tilted(prior, factor):
    odds = prior / (1 - prior) * factor
    return odds / (1 + odds)


def case(priors):
    """The new job as anybody can write it for the command `reason`."""
    places = ["rear-left-outer", "rear-left-inner", INNER, OUTER]
    units = {place: home(place) for place in places} | {OUTER: NEW}
    return {
        "positions": [{"id": place, "group": "rear"} for place in places],
        "units": [{"id": unit, "prior": 0.05} for unit in units.values()],
        "tests": [{"fitted": units, "faulted": [OUTER]}],
        "meter": [],
        "priors": [{"cause": cause, "prior": chance} for cause, chance in priors.items()],
    }


def test_a_second_failure_at_one_position_speaks_for_the_circuit_as_enumerated(back):
    """The odds of circuit and blocked times 1 + 5 * 3/4: 90 days are half of the first half-life."""
    factor = 1 + 5 * 0.75
    priors = {CIRCUIT: round(tilted(0.005, factor), 9), BLOCKED: round(tilted(0.01, factor), 9)}
    exact = Enumeration(case({}))
    exact.prior.update(priors)
    # Proven by clean tests and driven since: the rate of any, and next to nothing of before.
    for unit in exact.prior:
        if unit.startswith("unit:"):
            proven = tilted(0.05, 0.05 ** (2 if unit == "unit:" + NEW else 4))
            exact.prior[unit] = proven + (1 - proven) * 0.05
    exact.weigh()
    assert back.chances() == pytest.approx(exact.marginals(), abs=1e-9)
    plain = Enumeration(case({})).marginals()
    assert back.chances()[CIRCUIT] > 2 * plain[CIRCUIT]


def test_the_case_says_the_priors_one_by_one_for_anybody_to_check(core):
    priors = {CIRCUIT: 0.0233, BLOCKED: 0.0458, "feed:rear": 0.2, "control": 0.0}
    exact = Enumeration(case({}))
    exact.prior.update(priors)
    exact.weigh()
    answer = core("reason", case=case(priors))
    found = {each["cause"]: each["probability"] / 1e9 for each in answer["causes"]}
    assert found == pytest.approx(exact.marginals(), abs=1e-9)


def test_after_a_repair_the_circuit_is_another_with_the_rate_of_any(core):
    done = {"fitted": {}, "cleaned": [], "repaired": [CIRCUIT]}
    answer = core("reason", case={**case({CIRCUIT: 0.4}), "now": done})
    found = {each["cause"]: each["probability"] / 1e9 for each in answer["causes"]}
    assert found[CIRCUIT + "#2"] == pytest.approx(0.005, abs=1e-9)
    assert found[CIRCUIT] > 0.5


@pytest.mark.parametrize(
    ("entry", "field"),
    [
        ({"cause": "unit:" + NEW, "prior": 0.1}, "priors[0].cause"),
        ({"cause": "circuit:roof", "prior": 0.1}, "priors[0].cause"),
        ({"cause": CIRCUIT, "prior": 1.1}, "priors[0].prior"),
        ({"cause": CIRCUIT}, "priors[0].prior"),
    ],
)
def test_names_what_is_wrong_with_a_prior(core, entry, field):
    with pytest.raises(CoreError) as caught:
        core("reason", case={**case({}), "priors": [entry]})
    assert caught.value.field == field


@pytest.mark.parametrize(("days", "factor"), [(0, "6"), (180, "3.5"), (360, "2.3"), (720, "1.3")])
def test_what_it_counts_for_halves_every_six_months(yard, days, factor):
    yard.come(1)
    yard.replaced()
    yard.come(2, days=days)
    assert f"each counts as {factor} times likelier" in english(yard.told()["sentences"][0])


def test_a_circuit_left_unrepaired_starts_with_what_is_left_of_its_chance(yard):
    yard.come(1)
    yard.exchanged()
    yard.force_test(OUTER)
    was = yard.chances()[CIRCUIT]
    yard.force("job_closed", note="", why="customer")
    yard.come(2, days=180)
    yard.test(OUTER)
    (sentence,) = [english(each) for each in yard.told()["sentences"]]
    assert was > 0.8
    start = 0.005 + (was - 0.005) / 2
    assert f"This job starts from {start * 100:.0f} %." in sentence
    assert yard.chances()[CIRCUIT] > 0.85


def test_what_was_repaired_elsewhere_is_not_held_against_the_vehicle(yard):
    yard.come(1)
    yard.test(OUTER)
    yard.force("job_closed", note="", why="elsewhere")
    yard.come(2, days=10)
    assert yard.told()["sentences"] == []


def test_a_first_visit_rests_on_nothing_earlier(yard):
    yard.come(1)
    yard.test(OUTER)
    assert yard.told() is None


def test_the_assumption_can_be_left_out_and_set(back):
    counted = back.chances()[CIRCUIT]
    told = back.told()
    assert [each["value"] for each in told["factors"] if each["on"]] == [6]
    back.record(*next(each for each in told["factors"] if each["value"] == 1)["events"])
    assert back.told()["sentences"] == []
    assert back.chances()[CIRCUIT] < counted / 2
    back.record(*next(each for each in back.told()["factors"] if each["value"] == 12)["events"])
    assert back.chances()[CIRCUIT] > counted
    before = back.chances()[CIRCUIT]
    back.record(*next(each for each in back.told()["halves"] if each["value"] == 24)["events"])
    assert back.chances()[CIRCUIT] > before


@pytest.mark.parametrize(("factor", "months"), [(0, 6), (101, 6), (6, 0), (6, 121)])
def test_a_past_that_cannot_count_so_is_refused(back, factor, months):
    with pytest.raises(Refused):
        back.fact("comeback_set", factor=factor, months=months)


def test_the_new_job_says_on_its_first_screen_that_the_vehicle_was_here(back):
    told = back.view()["back"]
    assert told["jobs"] == 1
    assert "90 days" in english(told["sentence"])
    assert "wiring" in english(told["reasons"][0])


@pytest.mark.parametrize(
    ("tests", "found"),
    [([], "Nothing has been tested yet."),
     ([()], "No cause was certain then."),
     ([(OUTER,), ()], "Then the fault showed at right outer; no cause was certain.")],
)  # fmt: skip
def test_what_ended_without_a_cause_says_where_its_fault_was(yard, tests, found):
    yard.come(1)
    for faulted in tests:
        yard.test(*faulted)
    yard.take("close", "customer")
    yard.come(2, days=3)
    assert yard.view()["back"]["found"] == found


def test_a_job_that_says_nothing_of_the_past_is_concluded_as_before(yard):
    yard.come(1)
    yard.replaced()
    yard.job = "j000000000002"
    yard.begin()
    yard.test(OUTER)
    assert yard.told()["sentences"] == []
    assert yard.chances()[CIRCUIT] == pytest.approx(Enumeration(case({})).marginals()[CIRCUIT], abs=2e-3)


def test_what_was_pulled_for_a_test_and_put_back_was_there_all_along(back):
    for unit, place in ((NEW, OUTER), (home("rear-left-outer"), "rear-left-outer")):
        before = since_of(back, place)
        back.move(unit, "out", place)
        back.move(unit, "fitted", place)
        assert since_of(back, place) == before
    assert [since_of(back, OUTER) > 0, since_of(back, "rear-left-outer")] == [True, 0]


def test_what_went_to_another_place_sits_there_since_then(back):
    back.move(home("rear-left-outer"), "out", "rear-left-outer")
    back.move(NEW, "out", OUTER)
    back.move(NEW, "fitted", "rear-left-outer")
    assert since_of(back, "rear-left-outer") == back.events[-1]["at"]


def since_of(yard, place):
    page = yard.core("vehicle", vehicle="v1", now=0, warranty_days=0)
    return next(each["since"] for each in page["positions"] if each["id"] == place)


def test_the_page_of_a_vehicle_tells_its_jobs_and_what_sits_where_since_when(back):
    page = back.core("vehicle", vehicle="v1", now=back.events[-1]["at"], warranty_days=365)
    outer = next(each for each in page["positions"] if each["id"] == OUTER)
    inner = next(each for each in page["positions"] if each["id"] == INNER)
    fitted = [e["at"] for e in back.events if e["kind"] == "unit_fitted" and e["data"]["unit"] == NEW]
    assert [outer["unit"], outer["since"]] == [NEW, fitted[-1]]
    assert [each["job"] for each in outer["found"]] == ["j000000000001"]
    assert inner["found"] == []
    assert [each["id"] for each in page["jobs"]] == ["j000000000002", "j000000000001"]
    assert [english(each["warranty"]) for each in page["jobs"]] == [
        "",
        "Warranty on this work: 275 more days.",
    ]
    assert english(page["jobs"][1]["sentence"]) == "Replaced then: the sensor from right outer."


def test_a_warranty_that_is_over_says_so_and_none_says_nothing(back):
    now = back.events[-1]["at"]
    over = back.core("vehicle", vehicle="v1", now=now, warranty_days=80)["jobs"][1]["warranty"]
    assert english(over) == "The warranty on this work ended 10 days ago."
    assert back.core("vehicle", vehicle="v1", now=now)["jobs"][1]["warranty"] == ""


def test_a_vehicle_that_is_not_on_record_is_refused(core):
    with pytest.raises(CoreError) as caught:
        core("vehicle", vehicle="v9")
    assert caught.value.field == "vehicle"
