"""Finds a browser, starts it and serves the app to it: for every test that needs a real page.

A browser test is never skipped: where no browser can be found, one is fetched, and where that fails too
the test fails with what to do.
"""

import atexit
import functools
import os
import re
import shutil
import subprocess
import sys
import time
from collections.abc import Iterable
from pathlib import Path

from PIL import Image
from playwright.sync_api import Browser
from playwright.sync_api import BrowserContext
from playwright.sync_api import Page
from playwright.sync_api import Playwright
from playwright.sync_api import sync_playwright

ROOT = Path(__file__).resolve().parents[1]
NAMES = ("chromium", "chromium-browser", "google-chrome")
# Playwright turns these off, and a browser hears the last list alone.
_OFF_FOR_PLAYWRIGHT = (
    "AvoidUnnecessaryBeforeUnloadCheckSync",
    "DestroyProfileOnBrowserClose",
    "HttpsUpgrades",
    "HttpsFirstBalancedModeAutoEnable",
    "LensOverlay",
    "MediaRouter",
    "PaintHolding",
    "ThirdPartyStoragePartitioning",
    "AvoidCorsURLLoaderRestartOnRedirect",
    "TcpPortRandomizationWin",
    "OptimizationHints",
    "NetworkTimeServiceQuerying",
    "AimEnabled",
    "PreconnectToSearch",
)
# A browser without a window has an address bar all the same, and a process draws its popup for each page:
# three quarters of what a page that shows nothing costs.
_POPUPS_OF_THE_ADDRESS_BAR = ("WebUIOmniboxAimPopup", "WebUIOmniboxFullPopup", "WebUIOmniboxPopup")
# A process that waits for a page to come: each page here has a context of its own and takes none that waits.
_PROCESSES_AHEAD = ("SpareRendererForSitePerProcess", "Prerender2")
ARGUMENTS = (
    "--no-sandbox",
    "--disable-gpu",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-features=" + ",".join([*_OFF_FOR_PLAYWRIGHT, *_POPUPS_OF_THE_ADDRESS_BAR, *_PROCESSES_AHEAD]),
)
CAMERA_SIZE = (1280, 720)

#: Whether the test that runs is marked as one that needs a browser; tests/conftest.py says so.
may_start = True


class NoBrowser(RuntimeError):
    """No browser was found and none could be fetched; the text says what to do."""


@functools.cache
def playwright() -> Playwright:
    """Return the one Playwright of this process, which allows no second; it ends with the process."""
    started = sync_playwright().start()
    atexit.register(started.stop)
    return started


def find_browser() -> str:
    """Return the path of a Chromium; fetches one where the machine has none.

    Only for tests that are marked, so that whoever leaves those out starts no browser.
    """
    assert may_start, "a test that starts a browser is marked `browser`"
    return _found()


@functools.cache
def _found() -> str:
    named = os.environ.get("SWAPTRAIL_CHROMIUM")
    if named:
        if not shutil.which(named):
            raise NoBrowser(f"SWAPTRAIL_CHROMIUM is {named}, which cannot be run.")
        return named
    found = _installed()
    if found:
        return found
    _run(sys.executable, "-m", "playwright", "install", "chromium")
    found = _installed()
    if not found and os.geteuid() == 0 and shutil.which("apt-get"):
        _run("apt-get", "update")
        _run("apt-get", "install", "-y", "--no-install-recommends", "chromium")
        found = _installed()
    if not found:
        raise NoBrowser(
            "No Chromium found, and none could be fetched. Install one (apt-get install chromium, or "
            "python -m playwright install chromium) or name it in SWAPTRAIL_CHROMIUM."
        )
    return found


def _installed() -> str | None:
    """Return a Chromium on PATH, or the one that Playwright has fetched before."""
    on_path = next(filter(None, map(shutil.which, NAMES)), None)
    own = playwright().chromium.executable_path
    return on_path or (own if Path(own).is_file() else None)


def _run(*command: str) -> None:
    """Run a command that may fail; what counts is whether a browser is there afterwards."""
    subprocess.run(command, check=False, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)


def launch(started: Playwright | None = None, *, args: Iterable[str] = ()) -> Browser:
    """Start a browser that keeps nothing."""
    return (started or playwright()).chromium.launch(executable_path=find_browser(), args=[*ARGUMENTS, *args])


def launch_profile(
    folder: Path,
    *,
    camera: "FakeCamera | None" = None,
    args: Iterable[str] = (),
    browser: str | None = None,
    **options,
) -> BrowserContext:
    """Start a browser on a profile folder, as a phone keeps it from day to day; `browser` names another one.

    Storage limits work only here. With `camera`, its pictures are what the camera shows, and the page may
    use it; `options` are those of Playwright's launch_persistent_context.
    """
    extra = list(args)
    if camera:
        extra += camera.arguments()
        options["permissions"] = [*options.get("permissions", ()), "camera"]
    options.setdefault("viewport", {"width": 390, "height": 844})
    return playwright().chromium.launch_persistent_context(
        folder, executable_path=browser or find_browser(), args=[*ARGUMENTS, *extra], **options
    )


def wait_until(page: Page, expression: str, arg: object = None, seconds: float = 30) -> None:
    """Wait until a JavaScript expression or function holds in the page, as long as a busy machine may need.

    Playwright's own wait evaluates text inside the page, which the app's policy forbids.
    """
    ends = time.monotonic() + seconds
    while not page.evaluate(expression, arg):
        if time.monotonic() > ends:
            raise AssertionError(f"still not true after {seconds} seconds: {expression}")
        page.wait_for_timeout(30)


# A browser says so after some seconds by the clock, as a busy machine alone lets pass; that what is fetched
# ahead is what the app takes is asked in tests/static/test_fetched_ahead.py.
_TAKEN_LATE = "was preloaded using link preload but not used within a few seconds"
# Not every breach of the policy reaches the console by itself.
_SAY_BROKEN_POLICY = """addEventListener('securitypolicyviolation', ({ effectiveDirective, blockedURI }) =>
  console.error(`broken policy: ${effectiveDirective} ${blockedURI}`));"""


class Complaints:
    """Collects what a page or its browser objects to: errors, broken policy, foreign requests."""

    def __init__(self, base: str) -> None:
        """Listen for pages of the app at `base`."""
        self.heard: list[str] = []
        self._base = base

    def listen(self, page: Page) -> Page:
        """Listen to one page from now on."""
        page.on("pageerror", lambda error: self.heard.append(f"page error: {error}"))
        page.on("console", lambda message: self._console(message.type, message.text))
        page.on("request", lambda request: self._request(request.url))
        page.add_init_script(_SAY_BROKEN_POLICY)
        return page

    def _console(self, kind: str, text: str) -> None:
        if kind in {"error", "warning"} and _TAKEN_LATE not in text:
            self.heard.append(f"console {kind}: {text}")

    def _request(self, url: str) -> None:
        if not url.startswith((self._base, "blob:", "data:")):
            self.heard.append(f"request to another address: {url}")


class FakeCamera:
    """A camera made of a file, whose picture can be changed while the browser films it.

    Chromium reads each frame of a y4m file anew from the disk, so writing over the one frame in it is
    like holding something else in front of the lens.
    """

    def __init__(self, path: Path, size: tuple[int, int] = CAMERA_SIZE) -> None:
        """Make the file, with an empty grey picture."""
        self.path = path
        self.size = size
        self.path.write_bytes(self._header() + b"FRAME\n" + self._frame(None))

    def arguments(self) -> list[str]:
        """Return the browser's arguments that put this file in front of its camera."""
        return [
            "--use-fake-device-for-media-stream",
            f"--use-file-for-fake-video-capture={self.path}",
        ]

    def show(self, *pictures: Image.Image) -> None:
        """Hold these pictures in front of the camera, side by side; none at all takes them away."""
        with self.path.open("r+b") as file:
            file.seek(len(self._header()) + len(b"FRAME\n"))
            file.write(self._frame(side_by_side(pictures, self.size) if pictures else None))

    def _header(self) -> bytes:
        width, height = self.size
        return f"YUV4MPEG2 W{width} H{height} F10:1 Ip A1:1 C420jpeg\n".encode()

    def _frame(self, picture: Image.Image | None) -> bytes:
        full = picture or Image.new("RGB", self.size, "#808080")
        luma, blue, red = full.convert("YCbCr").split()
        half = (self.size[0] // 2, self.size[1] // 2)
        return b"".join(plane.tobytes() for plane in (luma, blue.resize(half), red.resize(half)))


def fake_camera_file(pictures: Iterable[Image.Image], path: Path, seconds: float = 2) -> Path:
    """Write a y4m file that shows the pictures one after the other, each for some seconds, in a loop."""
    camera = FakeCamera(path)
    frames = [b"FRAME\n" + camera._frame(side_by_side([picture], camera.size)) for picture in pictures]
    with path.open("wb") as file:
        file.write(camera._header())
        for frame in frames:
            file.write(frame * round(seconds * 10))
    return path


def side_by_side(pictures: Iterable[Image.Image], size: tuple[int, int]) -> Image.Image:
    """Return the pictures on a grey ground, each centred in its share of the middle square.

    Only the middle square: the app reads no more of the picture than its finder shows.
    """
    shown = list(pictures)
    whole = Image.new("RGB", size, "#808080")
    square = min(size)
    share = square // len(shown)
    for index, picture in enumerate(shown):
        small = picture.convert("RGB")
        small.thumbnail((share * 9 // 10, square * 9 // 10))
        left = (size[0] - square) // 2 + index * share + (share - small.width) // 2
        whole.paste(small, (left, (size[1] - small.height) // 2))
    return whole


class Server:
    """`swaptrail serve` as a process of its own."""

    def __init__(self, data: Path, port: int, package: Path = ROOT) -> None:
        """Start it and wait until it answers; `package` is where the code of the server lies."""
        self.data = data
        self.package = package
        self.port = port
        self.base = ""
        self.link = ""
        self.start()

    def start(self) -> None:
        """Start the process, again after `stop`; prints a pairing link each time."""
        command = [sys.executable, "-u", "-m", "server.commands.cli", "serve", "--pair"]
        self._process = subprocess.Popen(
            [*command, "--data", str(self.data), "--port", str(self.port)],
            cwd=self.package,
            stdout=subprocess.PIPE,
            stderr=subprocess.STDOUT,
            text=True,
        )
        said = []
        for line in self._process.stdout:
            said.append(line)
            found = re.search(r"(http\S+)/pair#\S+", line)
            if found:
                self.base, self.link = found[1], found[0]
                return
        self.stop()
        raise RuntimeError(f"the server did not start: {''.join(said)}")

    def stop(self) -> None:
        """End the process; the data folder stays."""
        self._process.terminate()
        self._process.communicate(timeout=20)


def start_server(data: Path, port: int, package: Path = ROOT) -> Server:
    """Start the real server on a data folder; `base` is its address, `link` pairs a phone.

    `package`: the checkout, or a folder with an unpacked wheel, whose app is bundled.
    """
    return Server(data, port, package)
