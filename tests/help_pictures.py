"""Makes the pictures of the help anew from the demo, each from the screen that a phone shows.

    python -m tests.help_pictures          all of them
    python -m tests.help_pictures stop     those named

The demo is the same each time and the clock stands still, so a picture changes only when its screen does.
Run it after a change of a screen that the help shows, and look at what came out.
"""

import contextlib
import io
import sys
import tempfile
from collections.abc import Callable
from collections.abc import Iterator
from pathlib import Path

from PIL import Image
from playwright.sync_api import Browser
from playwright.sync_api import Locator
from playwright.sync_api import Page

import demo_db
from demo_db.cars import blue_estate
from demo_db.stories import COMES_AND_GOES
from demo_db.stories import FOLLOWS
from demo_db.stories import START
from demo_db.stories import TWO_FAULTS
from server.core.codes import labels
from server.log import events
from server.storage.kept_days import RETURN_WINDOW
from tests.browser_support import launch
from tests.static.app_server import AppServer

PICTURES = Path(__file__).resolve().parents[1] / "static" / "help" / "en" / "pictures"
PORT = 8731  # always the same one: it stands in the labels' symbols
NOW = START + 19 * 24 * 60 * 60 * 1000  # the day after the last story
# A screen has few; lossless it takes less than a lossy picture of it.
COLOURS = {"self-test": 8, "stop": 5, "verdict": 7, "counter": 5, "label": 3}
VIEWPORT = {"width": 390, "height": 1400}  # so high that every part stands on it without scrolling
PIXELS_A_POINT = 1  # twice as sharp would be three times as large
CAMERA = ("--use-fake-ui-for-media-stream", "--use-fake-device-for-media-stream")


class Yard:
    """The demo on a port, and phones that look at it."""

    def __init__(self, data: Path, browser: Browser) -> None:
        """Build the demo and serve it."""
        demo_db.build(data, f"http://localhost:{PORT}")
        self.server = AppServer(data, port=PORT)
        with contextlib.closing(self.server.database()) as db:
            RETURN_WINDOW.change(db, 0)
        self._browser = browser

    @contextlib.contextmanager
    def phone(self, role: str = "bench") -> Iterator[Page]:
        """Give a phone that is paired and on the home screen, so that no banner stands above the work."""
        context = self._browser.new_context(
            viewport=VIEWPORT,
            device_scale_factor=PIXELS_A_POINT,
            locale="en-GB",
            timezone_id="UTC",
            color_scheme="light",
            reduced_motion="reduce",
        )
        page = context.new_page()
        page.add_init_script(_ON_HOME_SCREEN)
        page.clock.set_fixed_time(NOW / 1000)
        page.goto(self.server.link(role))
        page.get_by_label("Your name").fill("Mara")
        page.get_by_role("button", name="Pair this phone").click()
        page.locator(".pill", has_text="all sent").wait_for()
        yield page
        context.close()

    def show(self, page: Page, address: str) -> None:
        """Show an address of the app."""
        page.goto(f"{self.server.base}/#/{address}")
        page.locator(".screen").wait_for()


_ON_HOME_SCREEN = """(() => {
  const asked = matchMedia.bind(window);
  const installed = { ...asked('all'), matches: true, addEventListener() {} };
  window.matchMedia = (query) => (query.includes('display-mode: standalone') ? installed : asked(query));
})();"""


def self_test(yard: Yard) -> Image.Image:
    """A self-test while it is entered, with one fault tapped."""
    with yard.phone() as page:
        yard.show(page, f"job/{COMES_AND_GOES}")
        page.get_by_role("button", name="Enter the new test").click()
        page.get_by_role("button", name="left inner").first.click()
        page.get_by_text("fault at left inner").wait_for()
        return shot(page, page.locator(".asked", has_text="Tap what shows a fault"), 470)


def stop(yard: Yard) -> Image.Image:
    """The wrong sensor in the hand, stopped."""
    with yard.phone() as page:
        yard.show(page, f"job/{TWO_FAULTS}")
        page.get_by_role("button", name="Exchange ").click()
        fresh = fresh_codes()
        pulled = [next(fresh) for _ in range(3)]
        for code in pulled:
            at_step(page, "pull")
            type_code(page, code)
            page.get_by_label("Code on the label").wait_for(state="detached")
        at_step(page, "fit")
        wanted = page.locator(".instruction").inner_text().replace("-", "")
        type_code(page, next(code for code in pulled if code not in wanted))
        alarm = page.get_by_role("alert")
        alarm.wait_for()
        return shot(page, alarm, 400)


def verdict(yard: Yard) -> Image.Image:
    """A verdict with its trail: the fault went with the sensor."""
    with yard.phone() as page:
        yard.show(page, f"job/{FOLLOWS}/trail")
        page.locator(".verdict").wait_for()
        return shot(page, page.locator("main"), 404)


def counter(yard: Yard) -> Image.Image:
    """What the clerk sees of a sensor that came back."""
    with yard.phone("counter") as page:
        page.get_by_role("button", name="Type a code").click()
        page.get_by_label("Code on the label").fill(bad_label(yard))
        page.get_by_role("button", name="Look it up").click()
        page.get_by_role("button", name="Otherwise").wait_for()
        return shot(page, page.locator(".proposal"), 337)


def label(yard: Yard) -> Image.Image:
    """One label as it comes out, with a code that is never printed."""
    with yard.phone() as page:
        yard.show(page, "labels/print")
        one = page.get_by_role("img", name="One label")
        one.evaluate("(image) => image.decode()")
        return shot(page, one, 400, ground=1)


ALL: dict[str, Callable[[Yard], Image.Image]] = {
    "self-test": self_test,
    "stop": stop,
    "verdict": verdict,
    "counter": counter,
    "label": label,
}


def at_step(page: Page, step: str) -> None:
    """Wait for a step of the job."""
    page.locator(f"[data-step={step}]").wait_for()


def type_code(page: Page, code: str) -> None:
    """Type the code of a label where the app asks for a scan."""
    page.get_by_role("button", name="Type").first.click()
    page.get_by_role("textbox").first.fill(code)
    page.get_by_role("button", name="Check").first.click()


def fresh_codes() -> Iterator[str]:
    """Return codes that no label of the demo has."""
    return iter(labels.codes_from([(index * 89 + 13) % 256 for index in range(2000)], 30))


def bad_label(yard: Yard) -> str:
    """Return the label of the sensor that lies at the parts counter in the demo."""
    unit = blue_estate().first_unit("rear-right-outer")
    with contextlib.closing(yard.server.database()) as db:
        told = [entry["event"] for entry in events.after(db, 0, events.last_n(db), 10**9)]
    return next(
        event["data"]["code"]
        for event in told
        if event["kind"] == "unit_labelled" and event["data"]["unit"] == unit
    )


def shot(page: Page, part: Locator, height: int, ground: int = 10) -> Image.Image:
    """Return a part of the screen with some ground around it, cut at a height in points."""
    page.evaluate("() => document.activeElement?.blur()")
    page.wait_for_load_state("networkidle")
    part.scroll_into_view_if_needed()
    box = part.bounding_box()
    assert box, "there is no such part on the screen"
    left, top = max(0, box["x"] - ground), max(0, box["y"] - ground)
    right = min(VIEWPORT["width"], box["x"] + box["width"] + ground)
    clip = {"x": left, "y": top, "width": right - left, "height": min(box["height"], height) + 2 * ground}
    with Image.open(io.BytesIO(page.screenshot(clip=clip, animations="disabled"))) as picture:
        return picture.convert("RGB")


def main(names: list[str]) -> int:
    """Write the pictures; return 0."""
    PICTURES.mkdir(parents=True, exist_ok=True)
    browser = launch(args=CAMERA)
    for name in names or ALL:
        with tempfile.TemporaryDirectory() as folder:
            yard = Yard(Path(folder), browser)
            try:
                file = PICTURES / f"{name}.webp"
                few = ALL[name](yard).quantize(COLOURS[name], kmeans=3, dither=Image.Dither.NONE)
                few = few.convert("RGB")
                few.save(file, "WEBP", lossless=True, quality=100, method=6)
                print(f"{file.stat().st_size:7,}  {file.name}")
            finally:
                yard.server.close()
    browser.close()
    return 0


if __name__ == "__main__":
    raise SystemExit(main(sys.argv[1:]))
