"""A practised person at one phone: sees which step is shown and does what the car at hand asks for."""

import re

from tests.bench.steps_car import Car
from tests.bench.steps_count import Count
from tests.browser.phone import CODES
from tests.browser.phone import Phone
from tests.browser_support import wait_until

VEHICLE, COMPLAINT, PART = "Blue estate", "Beeps without reason", "PS-4711"
REPAIR = "Pin seated and locked"
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
            "look": self.looks,
            "test": self.enters_the_test,
            "test.again": self.enters_the_test,
            "photo": self.photographs,
            "take": self.takes,
            "pull": self.pulls,
            "fit": self.fits,
            "measure": self.measures,
            "wiring.measure": self.measures,
            "measure.again": self.measures_again,
            "replace": self.replaces,
            "home": self.gives_away,
            "where_to": self.gives_away,
        }
        return known.get(step, self.count.main)

    def opens(self) -> None:
        """Open the job: what the vehicle is, what is wrong, where its sensors sit, their part number."""
        count, page = self.count, self.page
        count.button("Open a job", leads_on=True)
        count.type(page.get_by_label("Vehicle", exact=True), VEHICLE)
        count.tap(page.get_by_role("radio", name=COMPLAINT))
        count.tap(page.get_by_role("radio", name=self.car.story.layout))
        count.type(page.get_by_label("Part number"), PART)
        count.main()

    def looks(self) -> None:
        """All is as it should be but for the lamp in reverse, which shows the fault."""
        self.count.button("Engage reverse")
        self.count.tap(self.page.get_by_role("radio", name="It is off, or shows a fault"))
        self.count.main()

    def enters_the_test(self) -> None:
        """Run the self-test and say what it showed."""
        count, page = self.count, self.page
        faulted = self.car.self_test()
        answers = page.locator("[data-answer]")
        for answer in answers.all():
            if self._is_said_by(answer.get_attribute("data-answer"), answer.inner_text(), faulted):
                count.tap(answer, leads_on=True)
                return
        if answers.count():
            count.tap(page.locator("[data-answer=other]"))
        for place in self.car.story.places:
            self._says(place, "fault" if place in faulted else "no fault")
        if not faulted:
            count.tap(page.get_by_role("checkbox", name="No fault anywhere"))
        if self.car.story.comes_and_goes and self.car.tests == 1:
            count.tap(page.locator("details.more > summary").first)
            count.tap(page.get_by_role("checkbox", name=re.compile("came and went|comes and goes")))
        count.main()

    def _is_said_by(self, answer: str | None, words: str, faulted: list[str]) -> bool:
        """Tell whether an answer says just these faults, none of them being said by one alone."""
        if answer in ("other", "not_heard"):
            return False
        return [place for place in self.car.story.places if place in words] == faulted

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
        if not self.count.has("video"):
            self.count.main()
        self._sees()
        self.count.main()

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
        assert code, self.count.told
        self.car.fit(code, place)
        self._identifies(code)

    def measures(self) -> None:
        """Check the wiring of a place; what is found bad is repaired."""
        count, page = self.count, self.page
        place = self._place()
        bad = self.car.wire_is_bad(place)
        count.button("Bad" if bad else "Good", leads_on=True)
        if bad:
            count.tap(page.get_by_role("radio", name=REPAIR))
            self.car.repair(place)
            count.button("I have repaired it", leads_on=True)

    def measures_again(self) -> None:
        """Do the check that was bad once more."""
        self.count.button("Good", leads_on=True)

    def replaces(self) -> None:
        """Take a new sensor out of its box and label it."""
        self.count.button(f"It reads {PART} too")
        self.car.unpack(self._labels_afresh())

    def gives_away(self) -> None:
        """Say where the sensor in the hand goes: to the parts counter."""
        alone = self.count.find("To the parts counter")
        if alone.count():
            self.count.tap(alone, leads_on=True)
            return
        if not self._code():
            self.count.main()
            return
        self._identifies(self._code())
        self.count.tap(self.page.get_by_role("radio", name="To the parts counter"))
        self.count.main()

    def _place(self) -> str:
        found = [place for place in self.car.story.places if place in self.count.told.lower()]
        assert len(found) == 1, self.phone.text()
        return found[0]

    def _code(self) -> str:
        found = _CODE.search(self.count.told)
        return found[0].replace("-", "") if found else ""

    def _identifies(self, code: str) -> None:
        """Say which sensor is in the hand."""
        count = self.count
        if self.by_hand:
            # The whole code: its end may stand in the midst of another one's.
            written = self.page.locator(".which-button").filter(has_text=f"{code[:3]}-{code[3:]}")
            if written.count():
                count.tap(written, leads_on=True)
                return
            count.button("Type", leads_on=True)
            count.type(self.page.locator(".field-code"), code)
            count.main()
            return
        if not count.has("video"):
            count.main()
        self._sees()
        count.show(code)

    def _labels_afresh(self) -> str:
        """Give a sensor a label: the next of the roll, or one written by hand. Return its code."""
        if not self.by_hand:
            code = self.roll.pop(0)
            self._identifies(code)
            return code
        count = self.count
        write = self.page.get_by_role("button", name=re.compile("[Ww]rite")).first
        if not write.is_visible():
            count.tap(self.page.get_by_text("Other ways, serial number"))
        count.tap(write, leads_on=True)
        code = self.page.locator(".written-code").inner_text().strip().replace("-", "")
        count.main()
        return code
