"""A contact that opens when warm: from the opening of the job to its close, without a network."""

from tests.bench.steps_car import REAR
from tests.bench.steps_car import Car
from tests.bench.steps_car import Story
from tests.browser.phone_log import facts
from tests.browser.test_circuit_screens import STATES
from tests.browser.test_sorts import Found
from tests.browser.test_sorts import Repairer
from tests.browser.test_sorts import repairer  # noqa: F401

OPENS_WARM = Story("warm", "Rear, 4 sensors", REAR, (), ("right outer",), True)
# What reads bad while the bumper plug is warm; cold all reads good.
BAD_WARM = ("measure the signal wire", "warm the bumper plug alone")


class WarmCar(Car):
    """Its fault is there at each test that is run warm, which all are until it is repaired."""

    def self_test(self):
        """Return the places that show a fault now."""
        self.tests += 1
        return [place for place in self.story.places if self._is_faulty(place)]


class Warmer(Repairer):
    """Warms the bumper before each test, and checks warm once the cold checks found nothing."""

    def __init__(self, phone, story, found):
        """Stand before a car whose bumper plug opens when warm."""
        super().__init__(phone, story, found)
        self.car = WarmCar(story)

    def _handler(self, step):
        known = {
            "wiring.stuck": self.warms,
            "measure.warm": self.measures,
            "measure.again.warm": self.measures_again,
            "found": self.repairs_what_is_named,
        }
        handled = super()._handler(step)
        return known.get(step) or handled

    def enters_the_test(self):
        """Say that it was warmed before, where that is asked."""
        asked = self.page.locator("[data-provoked]")
        if asked.count():
            asked.select_option("heat")
        super().enters_the_test()

    def warms(self):
        """Nothing was found cold."""
        self.count.button("Check it warmed with hot air", leads_on=True)
        self.page.locator("[data-step='measure.warm']").wait_for()
        self.page.get_by_text("Hot exhaust").wait_for()

    def measures(self):
        """Read what a contact in the bumper plug shows that opens when warm."""
        count = self.count
        warm = count.step == "measure.warm"
        bad = warm and [check for check in BAD_WARM if check in count.told]
        # No two channels can be exchanged here.
        reads = "unclear" if "exchange two channels" in count.told else "bad" if bad else "good"
        count.tap(self.page.locator(f"[data-reads='{reads}']"), leads_on=True)

    def repairs_what_is_named(self):
        """Say what was done; the place is known, and named in words and in the drawing."""
        self.page.get_by_role("heading", name="it is in the bumper plug").wait_for()
        assert self.page.evaluate(STATES)["4"] == "named"
        self.count.type(self.page.get_by_role("textbox").first, "Pins of the bumper plug replaced")
        for place in self.car.story.bad_wires:
            self.car.repair(place)
        self.count.button("I have repaired it", leads_on=True)


def test_comes_and_goes_when_warm_from_the_opening_to_the_close(repairer):  # noqa: F811
    person = repairer(OPENS_WARM, Found("Beeps without reason"), kind=Warmer)
    person.does_the_job()

    assert person.page.locator("[data-step=done]").count() == 1
    assert "measure.again.warm" in person.said
    assert list(person.said)[-2:] == ["walk", "home"]
    log = facts(person.page)
    kinds = [fact["kind"] for fact in log]
    assert kinds.count("job_opened") == kinds.count("job_closed") == kinds.count("walk_checked") == 1
    [repair] = [fact["data"] for fact in log if fact["kind"] == "circuit_repaired"]
    assert (repair["cause"], repair["segment"]) == ("circuit:rear-right-outer", "splice")
    read = [fact["data"] for fact in log if fact["kind"] == "circuit_measured"]
    assert {each["provoked"] for each in read if "provoked" in each} == {"heat"}
    assert {each["reads"] for each in read if "provoked" not in each} <= {"good", "unclear"}
    assert [each["reads"] for each in read if "provoked" in each][-1] == "good"
    after = [fact["data"] for fact in log[kinds.index("circuit_repaired") :] if fact["kind"] == "test_run"]
    assert after
    assert all(test["faulted"] == [] and test["provoked"] == "heat" for test in after)
