"""A person with a phone: taps what is on the screen, holds labels before the camera, cuts the network."""

import os
import re
from collections.abc import Callable
from collections.abc import Iterator
from pathlib import Path

from PIL import Image

from server.core.codes import labels
from server.core.codes.labels import address
from server.core.printing.face import QUIET_MODULES
from server.labelling.symbol import matrix
from tests.browser_support import Complaints
from tests.browser_support import FakeCamera
from tests.browser_support import launch_profile
from tests.browser_support import wait_until
from tests.static.builds import wait_for_offline_use

CODES = labels.codes_from([(index * 89 + 13) % 256 for index in range(2000)], 30)
_PIXELS_A_MODULE = 9


def label_picture(code: str, base: str) -> Image.Image:
    """Return the picture of a real label: the same modules that the printed sheet has, on white."""
    return qr_picture(address(code, base))


def qr_picture(text: str) -> Image.Image:
    """Return a text as a QR symbol with its quiet zone."""
    modules = matrix(text)
    side = len(modules) + 2 * QUIET_MODULES
    picture = Image.new("L", (side, side), 255)
    for y, row in enumerate(modules):
        for x, dark in enumerate(row):
            if dark:
                picture.putpixel((x + QUIET_MODULES, y + QUIET_MODULES), 0)
    size = side * _PIXELS_A_MODULE
    return picture.resize((size, size), Image.Resampling.NEAREST).convert("RGB")


def held_in_hand(size: tuple[int, int]) -> dict:
    """Return what makes a browser's page that of a phone of this size."""
    return {"viewport": {"width": size[0], "height": size[1]}, "has_touch": True, "is_mobile": True}


class Hands:
    """Whoever has the first page of a browser's context before them, and their fingers."""

    def __init__(self, context, base: str):
        """Take its page in hand."""
        self.base = base
        self.context = context
        self.page = context.pages[0] if context.pages else context.new_page()
        self.complaints = Complaints(base)
        self.complaints.listen(self.page)
        shots = os.environ.get("SWAPTRAIL_SHOTS")
        self.shots = Path(shots) if shots else None
        self._shot = 0

    def close(self):
        """Put the phone away."""
        self.context.close()

    def pairs(self, link: str, name="Mara") -> None:
        """Pair the phone and give a name."""
        self.page.goto(link)
        self.page.get_by_label("Your name").fill(name)
        self.tap("Pair this phone")
        self.page.get_by_role("button", name="Open a job").wait_for()

    def visit(self, link: str, name="Mara") -> None:
        """Pair the phone, give a name, and wait until the app is there for offline work."""
        self.pairs(link, name)
        self.wait_for_offline_use()

    def wait_for_offline_use(self) -> None:
        """Wait until the app is on the phone, as its screen about this phone says."""
        wait_for_offline_use(self.page)

    def offline(self) -> None:
        """Cut the network, once the page's worker answers for it: else a browser notes each question."""
        wait_until(self.page, "() => navigator.serviceWorker.controller !== null", seconds=30)
        self.context.set_offline(True)

    def online(self) -> None:
        """Give the network back."""
        self.context.set_offline(False)

    def tap(self, name: str) -> None:
        """Tap the button whose words begin with `name`, as soon as it is there and enabled."""
        self.look()
        self.page.get_by_role("button", name=re.compile("^" + re.escape(name))).first.tap()

    def step(self) -> str:
        """Return the id of the step on the screen, once it has settled."""
        body = self.page.locator("[data-step]")
        body.wait_for()
        return body.get_attribute("data-step")

    def wait_step(self, *ids: str) -> str:
        """Wait until one of these steps is on the screen and return it."""
        wait_until(
            self.page,
            "(ids) => ids.includes(document.querySelector('[data-step]')?.dataset.step)",
            list(ids),
        )
        return self.step()

    def text(self) -> str:
        """Return all words on the screen."""
        return self.page.locator("body").inner_text()

    def see(self, words: str) -> None:
        """Wait until words are on the screen."""
        self.page.get_by_text(words).first.wait_for()

    def look(self) -> None:
        """Keep a picture of the screen, when someone wants to look at the run."""
        if self.shots:
            self._shot += 1
            self.page.wait_for_timeout(250)
            self.page.screenshot(path=self.shots / f"{self._shot:03}.png")


class Phone(Hands):
    """One phone with the app, its camera and its owner's fingers."""

    def __init__(self, folder: Path, base: str, size=(390, 844), **options):
        """Take a phone out of its box: an empty profile with a camera; `options` are launch_profile's."""
        folder.mkdir(parents=True, exist_ok=True)
        self.camera = FakeCamera(folder / "camera.y4m")
        profile = launch_profile(folder / "profile", camera=self.camera, **held_in_hand(size), **options)
        super().__init__(profile, base)

    def hold(self, code: str) -> None:
        """Hold a label before the camera."""
        self.camera.show(label_picture(code, self.base))

    def lower(self) -> None:
        """Take it away again."""
        self.camera.show()


def taken(make: Callable) -> Iterator[Callable]:
    """Give a maker of phones like `make`, for a fixture; none may have complained by the end of the test."""
    phones = []

    def take(*args, **options):
        phones.append(make(*args, **options))
        return phones[-1]

    yield take
    for phone in phones:
        heard = phone.complaints.heard
        phone.close()
        assert heard == []
