"""A mechanic who does whole jobs with a phone, screen by screen, as the app leads."""

from tests.browser.phone import CODES
from tests.browser.phone import Phone
from tests.browser_support import wait_until

# Pictures that the reader of codes was given, one at a time, and those that it is through with: it has
# answered, or was given up for another.
COUNT_READINGS = """() => {
  if (window.reading) return;
  window.reading = { begun: 0, ended: 0 };
  const { postMessage } = Worker.prototype;
  Worker.prototype.postMessage = function (message, ...rest) {
    if (message.picture) {
      reading.ended = reading.begun;
      reading.begun += 1;
      this.addEventListener('message', () => { reading.ended = reading.begun; }, { once: true });
    }
    return postMessage.call(this, message, ...rest);
  };
}"""
# The camera shows one even ground.
SEES_NOTHING = """() => {
  const video = document.querySelector('video');
  if (!video?.videoWidth) return false;
  const canvas = Object.assign(document.createElement('canvas'), { width: 64, height: 36 });
  const context = canvas.getContext('2d');
  context.drawImage(video, 0, 0, 64, 36);
  const [red, ...rest] = context.getImageData(0, 0, 64, 36).data.filter((_, at) => at % 4 === 0);
  return rest.every((value) => Math.abs(value - red) < 8);
}"""
# Between two readings: one that seemed to take so long would be followed by as long a rest.
JUMPS_OVER_FIVE_SECONDS = """() => {
  if (reading.ended < reading.begun) return false;
  const now = performance.now.bind(performance);
  performance.now = () => now() + 5000;
  return true;
}"""


class Mechanic:
    """Knows which label is stuck on which sensor, and which sensor is really where."""

    def __init__(self, phone: Phone):
        """Take a phone and a roll of fresh labels."""
        self.phone = phone
        self.page = phone.page
        self.roll = list(CODES)
        self.label_of_position = {}

    def opens_a_job(self, vehicle="Blue estate", layout="Rear, 4 sensors", part="PS-4711"):
        """Open a job and do what comes before the first test."""
        phone = self.phone
        phone.tap("Open a job")
        self.page.get_by_label("Vehicle", exact=True).fill(vehicle)
        self.page.get_by_role("radio", name="Beeps without reason").tap()
        self.page.get_by_role("radio", name=layout).tap()
        self.page.get_by_label("Part number").fill(part)
        phone.tap("Open the job")
        self.looks_around()

    def looks_around(self):
        """Go from the cautions to the first self-test, with nothing unusual to be seen."""
        phone = self.phone
        phone.wait_step("cautions")
        phone.tap("I have read these")
        phone.wait_step("look")
        phone.tap("Engage reverse")
        self.page.get_by_role("radio", name="It is off, or shows a fault").tap()
        phone.tap("Record what I saw")
        phone.wait_step("test")

    def enters_a_test(self, *faulted: str):
        """Enter a self-test whose sounder was heard, with faults at positions by their names."""
        phone = self.phone
        if phone.wait_step("test", "seat") == "seat":
            phone.tap("All of it is right")
            phone.wait_step("test")
        other = self.page.get_by_role("button", name="Something else")
        if other.count():
            other.tap()
        for name in faulted:
            self.page.get_by_role("button", name=name).first.tap()
        if not faulted:
            self.page.get_by_role("checkbox", name="No fault anywhere").tap()
        phone.see("fault at " + " and ".join(faulted) if faulted else "no fault anywhere")
        phone.tap("Sounder heard: record")
        self.page.locator("[data-step='test'] .panel-act").wait_for(state="detached")

    def answers(self, words: str):
        """Answer a self-test, its sounder heard, by one of the answers that the app offers."""
        self.phone.wait_step("test")
        self.phone.tap(words)

    def photographs(self, count: int):
        """Take the pictures that the flow asks for, one shutter a position, with the camera left open."""
        self.phone.wait_step("photo")
        if not self.page.locator("video").count():
            self.phone.tap("Open the camera")
        for number in range(count):
            self.phone.see(f"{number + 1} of {count}" if count > 1 else "Photograph")
            wait_until(self.page, "() => document.querySelector('video')?.videoWidth > 0")
            self.phone.tap("Take ")

    def told(self) -> str:
        """Return what the app says to do now: the line under a heading that stays, else the heading."""
        said = self.page.locator("[data-step] .instruction")
        return (said if said.count() else self.page.get_by_role("heading", level=1)).first.inner_text()

    def leaves(self, title: str):
        """Wait until the step of this title is done: another one has the screen, and it is no stop."""
        wait_until(
            self.page,
            """(title) => {
              const line = document.querySelector('[data-step] .instruction');
              const heading = line ?? document.querySelector('[data-step] h1');
              const stopped = document.querySelector('[data-step] [role=alert]');
              return heading && !stopped && heading.innerText !== title;
            }""",
            title,
        )

    def starts(self, words: str):
        """Begin the move that the app proposes."""
        self.phone.wait_step("move")
        self.phone.tap(words)

    def goes_through_the_exchange(self, mix_up_first: bool = False):
        """Pull, scan, fit, scan, lock as led; `mix_up_first` holds the wrong sensor at the first fit."""
        phone = self.phone
        fitted = []
        while phone.wait_step("pull", "fit", "lock", "test", "seat") != "test":
            step = phone.step()
            title = self.told()
            if step == "pull":
                self.pulls(title)
            elif step == "fit":
                code = title.split()[1].replace("-", "")
                if mix_up_first and not fitted:
                    self.is_stopped(code)
                    phone.tap("Scan again")
                fitted.append(code)
                self.scans(code)
            elif step == "lock":
                self.page.locator(".main-button").tap()
            else:
                phone.tap("All of it is right")
            self.leaves(title)

    def pulls(self, title: str):
        """Pull what the title names: a sensor with a label is scanned, another gets a fresh one."""
        where = title.split(" at ")[-1]
        known = title.split()[1].replace("-", "")
        code = known if known in CODES else self.roll.pop(0)
        self.label_of_position[where] = code
        self.scans(code)

    def scans(self, code: str):
        """Hold the label before the camera, opened where it is not open already."""
        wait_until(
            self.page,
            """() => !document.querySelector('[data-step] [role=alert]')
              && (document.querySelector('video')
                || [...document.querySelectorAll('button')].some((each) => /^Scan/.test(each.innerText)))""",
        )
        is_open = self.page.locator("video").count()
        self.phone.hold(code)
        if not is_open:
            self.phone.tap("Scan")

    def puts_the_label_away(self):
        """Take the last label away, and let it have been away so long that it counts as shown again.

        The page's clock jumps over that time once pictures without the label were read: a busy machine may
        look at the label seconds after it was taken away.
        """
        self.phone.lower()
        self.page.evaluate(COUNT_READINGS)
        if self.page.locator("video").count():
            wait_until(self.page, SEES_NOTHING, seconds=20)
            enough = self.page.evaluate("reading.begun") + 2
            wait_until(self.page, "(enough) => reading.ended >= enough", enough, seconds=30)
        wait_until(self.page, JUMPS_OVER_FIVE_SECONDS, seconds=20)

    def is_stopped(self, belongs: str):
        """Hold another sensor that is in hand: the app stops it with both names."""
        phone = self.phone
        wrong = next(code for code in self.label_of_position.values() if code != belongs)
        self.puts_the_label_away()  # it was the last one pulled
        self.scans(wrong)
        phone.see("STOP: wrong sensor in your hand")
        words = phone.text()
        assert f"{wrong[:3]}-{wrong[3:]}" in words
        assert f"{belongs[:3]}-{belongs[3:]}" in words
        phone.look()
        phone.lower()

    def replaces_the_sensor(self, part="PS-4711"):
        """Enter the new sensor's part number, label it, and go through the replacement."""
        phone = self.phone
        phone.wait_step("replace")
        self.page.get_by_label("New sensor: read it off").fill(part)
        new = self.roll.pop(0)
        phone.hold(new)
        phone.tap("Label the new sensor")
        self.goes_through_the_exchange()
        return new

    def finishes(self, out: int):
        """Walk behind it, leave the good ones, say where each pulled sensor goes, close."""
        phone = self.phone
        if phone.wait_step("walk", "seat") == "seat":
            phone.tap("All of it is right")
            phone.wait_step("walk")
        phone.tap("All of them sound")
        if out == 1:
            phone.wait_step("home", "where_to")
            phone.tap("To the parts counter")
        else:
            for _ in range(out):
                phone.wait_step("where_to")
                title = self.page.get_by_role("heading", level=1).inner_text()
                self.scans(title.split()[2].replace("-", ""))
                self.page.get_by_role("radio", name="To the parts counter").tap()
                phone.tap("Save where it goes")
            last = phone.wait_step("home", "close")
            phone.tap("Leave them there and close" if last == "home" else "Close the job")
        phone.wait_step("done")

    def finds_it_in_the_connector(self):
        """Look at the pins, find one pushed back, repair it, and look once more."""
        phone = self.phone
        phone.wait_step("wiring.measure")
        phone.tap("Bad")
        phone.wait_step("wiring.found")
        phone.see("it is in the pins of the sensor's plug")
        self.page.get_by_role("textbox").first.fill("Pin 2 pushed back in and locked")
        phone.tap("I have repaired it")
        phone.wait_step("measure.again")
        phone.tap("Good")
