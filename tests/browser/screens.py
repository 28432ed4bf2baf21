"""What tests of single screens share: the app on a port, a phone that is shown to it, a sweep for room."""

import contextlib

from tests.browser.seeded_job import NO_WORKER
from tests.browser.seeded_job import put_on_phone
from tests.browser_support import Complaints
from tests.browser_support import wait_until

FAKE_CAMERA = ("--use-fake-ui-for-media-stream", "--use-fake-device-for-media-stream")
SMALLEST = 48

# Everything that a finger aims at. A control that is hidden inside its own tile counts as the tile.
TOO_SMALL = """(smallest) => {
  const aims = document.querySelectorAll('a[href], button, summary, label.choice, label.check,'
    + ' label.layout-choice, textarea, input:not([type=radio]):not([type=checkbox]):not([type=file])');
  const found = [];
  for (const aim of aims) {
    const box = aim.getBoundingClientRect();
    const [width, height] = [Math.round(box.width), Math.round(box.height)];
    if (!width || aim.tabIndex < 0 && aim.tagName !== 'LABEL') continue;
    if (width < smallest || height < smallest) {
      found.push(`${aim.tagName} "${aim.textContent.trim().slice(0, 40)}" ${width}x${height}`);
    }
  }
  return found;
}"""

TOO_WIDE = """() => {
  const boxes = [document.documentElement, ...document.querySelectorAll('main')];
  return boxes.filter((box) => box.scrollWidth > box.clientWidth + 1).map((box) => box.tagName);
}"""


class Screens:
    """One phone whose page a test looks at."""

    def __init__(self, browser, base, *, width=390, height=844, worker=False, **options):
        """Open an empty phone; nothing is loaded yet.

        Without `worker` its browser has no service worker, which only tests of what one does need.
        """
        self.base = base
        self.context = browser.new_context(
            viewport={"width": width, "height": height},
            permissions=["camera"],
            **options,
        )
        if not worker:
            self.context.add_init_script(NO_WORKER)
        self.complaints = Complaints(base)
        self.page = self.context.new_page()
        self._listens = False

    def holds(self, driver) -> "Screens":
        """Put a job that was driven through the core on this phone."""
        self.lacks_pictures()
        put_on_phone(self.page, self.base, driver)
        return self

    def lacks_pictures(self) -> None:
        """Give nothing for the pictures that made-up entries name: a browser notes each asked for in vain."""
        empty = {"content_type": "image/jpeg", "body": b""}
        self.context.route(
            "**/api/photos/**",
            lambda route: route.fulfill(**empty) if route.request.method == "GET" else route.continue_(),
        )

    def show(self, address="/#/"):
        """Show an address of the app and wait until its screen is there."""
        if not self._listens:
            self._listens = True
            self.complaints.listen(self.page)
        self.page.goto(self.base + address)
        self.page.locator(".screen").wait_for()
        return self.page

    def show_anew(self, address):
        """Show an address whose screen takes the place of the one that stands there."""
        self.page.evaluate("() => { globalThis.before = document.querySelector('main'); }")
        self.show(address)
        wait_until(
            self.page,
            "() => document.querySelector('main') && document.querySelector('main') !== globalThis.before",
        )
        return self.page

    def tap(self, words: str) -> None:
        """Tap the first button with these words."""
        self.page.get_by_role("button", name=words).first.click()

    def sees(self) -> None:
        """Wait until the camera shows a picture."""
        wait_until(self.page, "() => document.querySelector('video')?.videoWidth > 0")

    def loses_network(self) -> None:
        """Cut the network, once the page's worker answers for it.

        Without one a page asks the network until its browser knows of the cut, and each question is noted.
        """
        wait_until(self.page, "() => navigator.serviceWorker.controller !== null")
        self.context.set_offline(True)

    def text_at(self, percent: int) -> None:
        """Set the text size as a person does in the settings of the phone."""
        size = f"{1.125 * percent}%"
        self.page.evaluate("(size) => { document.documentElement.style.fontSize = size; }", size)

    def lacks_room(self) -> list[str]:
        """Return what is too small for a finger or wider than the screen."""
        return self.page.evaluate(TOO_SMALL, SMALLEST) + self.page.evaluate(TOO_WIDE)

    def lacks_room_on_any(self) -> dict:
        """Return what lacks room on a usual phone and on the narrowest one; the page is as it was then."""
        usual = self.page.viewport_size
        found = self.lacking((320, 640, 100), (390, 844, 100))
        self.page.set_viewport_size(usual)
        return found

    def lacking(self, *sizes) -> dict:
        """Return what lacks room by width, height and text size in percent, where anything does."""
        found = {}
        for width, height, percent in sizes:
            self.page.set_viewport_size({"width": width, "height": height})
            self.text_at(percent)
            found[width, height, percent] = self.lacks_room()
        return {size: lacks for size, lacks in found.items() if lacks}


@contextlib.contextmanager
def screens(browser, base, **options):
    """Give a phone; by the end it must not have complained."""
    phone = Screens(browser, base, **options)
    try:
        yield phone
        heard = phone.complaints.heard
        assert not heard, heard
    finally:
        phone.context.close()
