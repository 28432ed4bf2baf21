"""A practised person at one phone: sees which step is shown and does what the car at hand asks for."""

import re

from tests.bench.steps_car import Car
from tests.bench.steps_count import Count
from tests.browser.phone import CODES
from tests.browser.phone import Phone
from tests.browser_support import wait_until

VEHICLE, COMPLAINT, PART = "Blue estate", "Beeps without reason", "PS-4711"
REPAIR = "Pin 2 pushed back in and locked"
_CODE = re.compile(r"\b[0-9A-Z]{3}-[0-9A-Z]{2}\b")
_MOST_STEPS = 250


class Finger:
    """Goes through one job; `by_hand` writes labels instead of scanning printed ones."""

    def __init__(self, phone: Phone, car: Car, *, by_hand: bool = False):
        """Stand before a car with a phone that shows the list of jobs."""
        self.count = Count(phone)
        self.phone = phone
        self.page = phone.page
        self.car = car
        self.by_hand = by_hand
        self.roll = list(CODES)

    def does_the_job(self) -> None:
        """From the list of jobs to the closed job."""
        self.count.begin()
        self.opens()
        for _ in range(_MOST_STEPS):
            step = self.count.step
            if step == "done":
                self.count.end()
                return
            self._handler(step)()
        raise AssertionError(f"still not done:\n{self.phone.text()}")

    def _handler(self, step: str):
        known = {
            "lamps.key_on": self.sees_lamps,
            "lamps.reverse": self.sees_lamps,
            "test": self.enters_the_test,
            "test.again": self.enters_the_test,
            "photo": self.photographs,
            "take": self.takes,
            "pull": self.pulls,
            "fit": self.fits,
            "check": self.ticks,
            "measure": self.measures,
            "wiring.measure": self.measures,
            "replace": self.replaces,
            "walk": self.walks,
            "where_to": self.gives_away,
        }
        return known.get(step, self.count.main)

    def opens(self) -> None:
        """Open the job: what the vehicle is, what is wrong, where its sensors sit, their part number."""
        count, page = self.count, self.page
        count.button("Open a job", leads_on=True)
        count.type(page.get_by_label("Vehicle", exact=True), VEHICLE)
        count.type(page.get_by_label("What is wrong"), COMPLAINT)
        count.tap(page.get_by_role("radio", name=self.car.story.layout))
        count.type(page.get_by_label("Part number of the sensors"), PART)
        count.main()

    def sees_lamps(self) -> None:
        """The lamps are as they are with a fault."""
        words = (
            "It comes on, then goes out"
            if self.count.step == "lamps.key_on"
            else "It is off, or shows a fault"
        )
        self.count.button(words, leads_on=True)

    def enters_the_test(self) -> None:
        """Run the self-test and say what it showed."""
        count, page = self.count, self.page
        faulted = self.car.self_test()
        count.tap(page.get_by_role("radio", name="Yes"))
        for place in self.car.story.places:
            self._says(place, "fault" if place in faulted else "no fault")
        if self.car.story.comes_and_goes and self.car.tests == 1:
            count.tap(page.get_by_role("checkbox", name=re.compile("came and went|comes and goes")))
        count.main()

    def _says(self, place: str, reading: str) -> None:
        """Tap a place on the board until it reads as it should; three taps go round."""
        mark = self.page.locator(".board").get_by_role("button", name=re.compile(f"^{place}\\b")).first
        for _ in range(3):
            name = mark.get_attribute("aria-label") or mark.inner_text()
            shown = "fault" if re.search(r"(?<!no )fault", name) else "no fault"
            if shown == reading:
                return
            self.count.tap(mark)

    def photographs(self) -> None:
        """Take the picture of a place."""
        count = self.count
        if not count.has("video"):
            count.button("Open the camera", leads_on=True)
        self._sees()
        count.button("Take the picture", leads_on=True)
        count.button("Keep this picture", leads_on=True)

    def _sees(self) -> None:
        wait_until(self.page, "() => document.querySelector('video')?.videoWidth > 0")

    def takes(self) -> None:
        """Take a spare from the shelf."""
        self._identifies(self._code())

    def pulls(self) -> None:
        """Pull a sensor; one without a label gets one."""
        place, code = self._place(), self._code()
        if code:
            self.car.pull(place, code)
            self._identifies(code)
        else:
            self.car.pull(place, self._labels_afresh())

    def fits(self) -> None:
        """Plug a sensor in where it is meant to go."""
        place, code = self._place(), self._code()
        assert code, self.count.heading
        self.car.fit(code, place)
        self._identifies(code)

    def ticks(self) -> None:
        """See that it sits right."""
        for box in self.page.get_by_role("checkbox").all():
            self.count.tap(box)
        self.count.main()

    def measures(self) -> None:
        """Check the wiring of a place; what is found bad is repaired."""
        count, page = self.count, self.page
        place = self._place()
        bad = self.car.wire_is_bad(place)
        count.tap(page.get_by_role("radio", name="Bad" if bad else "Good").first)
        count.button("Save this check", leads_on=True)
        if bad:
            count.button("I have repaired it")
            count.type(page.get_by_role("textbox").first, REPAIR)
            self.car.repair(place)
            count.button("I have repaired it", leads_on=True)

    def replaces(self) -> None:
        """Take a new sensor out of its box and label it."""
        self.count.type(self.page.get_by_label("New sensor: read it off"), PART)
        self.car.unpack(self._labels_afresh())

    def walks(self) -> None:
        """Walk behind the car with the pole: all of them are heard."""
        for answer in self.page.get_by_role("button", name=": sounds").all():
            self.count.tap(answer)
        self.count.main()

    def gives_away(self) -> None:
        """Say where the sensor in the hand goes: to the parts counter."""
        self._identifies(self._code())
        self.count.tap(self.page.get_by_role("radio", name="To the parts counter"))
        self.count.main()

    def _place(self) -> str:
        found = [place for place in self.car.story.places if place in self.count.heading.lower()]
        assert len(found) == 1, self.count.heading
        return found[0]

    def _code(self) -> str:
        found = _CODE.search(self.count.heading)
        return found[0].replace("-", "") if found else ""

    def _identifies(self, code: str) -> None:
        """Say which sensor is in the hand."""
        count = self.count
        if self.by_hand:
            count.button("Type", leads_on=True)
            count.type(self.page.locator(".field-code"), code)
            count.main()
            return
        if not count.has("video"):
            count.button("Scan", leads_on=True)
        self._sees()
        count.show(code)

    def _labels_afresh(self) -> str:
        """Give a sensor a label: the next of the roll, or one written by hand. Return its code."""
        if not self.by_hand:
            code = self.roll.pop(0)
            self._identifies(code)
            return code
        count = self.count
        count.tap(self.page.get_by_role("button", name=re.compile("[Ww]rite")).first, leads_on=True)
        code = self.page.locator(".written-code").inner_text().strip().replace("-", "")
        count.main()
        return code
