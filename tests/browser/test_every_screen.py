"""Every screen holds: for those who hear it, at 200 % text, at 320 px, lying down, in both themes.

The rules of axe stand for what a machine can tell of WCAG 2.2; that a person finds the way only people can
tell.
"""

import re
from contextlib import closing

import pytest

from server.clock import now_ms
from server.labelling import store
from server.words.spoken import speech_of
from tests.browser.every_screen import ALONE
from tests.browser.every_screen import AT_COUNTER
from tests.browser.every_screen import Eye
from tests.browser.every_screen import addresses
from tests.browser.every_screen import without_example
from tests.browser.every_stage import DIGEST
from tests.browser.every_stage import put_on_server
from tests.browser.seeded_job import job_driver
from tests.browser.seeded_job import put_on_phone
from tests.browser_support import ROOT
from tests.core.counter_yard import BAD
from tests.core.counter_yard import proven
from tests.core.driver import JOB
from tests.hosts import Core
from tests.static.alone_app import AloneApp
from tests.static.app_server import AppServer

# What people typed into the jobs of the yard.
TYPED = ("Swaptrail", "Blue estate")


class Yard:
    """A server with a job at every kind of step, and what its addresses are made of."""

    def __init__(self, server: AppServer):
        """Fill the server's empty folder."""
        self.server = server
        self.jobs, worn = put_on_server(server)
        with closing(self.server.database()) as db:
            self.batch = store.issue(db, 4, self.server.base, {}, now_ms()).batch
        number = list(self.jobs).index("returned") + 1
        self.unit = f"v{number:012x}.rear-right-outer"
        self.code = worn[self.unit]

    def addresses(self) -> list[str]:
        """Return an address of every screen."""
        return addresses(self.jobs, unit=self.unit, code=self.code, batch=self.batch, photo=DIGEST)


@pytest.fixture(scope="module")
def yard(tmp_path_factory):
    """Give the server, once for all tests here."""
    server = AppServer(tmp_path_factory.mktemp("every-screen"))
    try:
        yield Yard(server)
    finally:
        server.close()


@pytest.fixture
def open_context(screen_browser):
    """Give a maker of phones whose person wants no motion."""
    contexts = []

    def make(**options):
        # The policy is taken off for axe alone; tests/static/test_policy.py holds the app to it.
        context = screen_browser.new_context(
            bypass_csp=True,
            reduced_motion="reduce",
            permissions=["camera"],
            service_workers="block",
            **options,
        )
        contexts.append(context)
        return context

    yield make
    for context in contexts:
        context.close()


@pytest.fixture
def take_eye(open_context, yard):
    """Give a maker of paired phones whose screens are looked at."""

    def take(role="bench"):
        eye = Eye(open_context().new_page(), yard.server.base)
        eye.open(yard.server.link(role).removeprefix(yard.server.base))
        eye.look("pair by a link")
        eye.page.get_by_label("Your name").fill("Mara")
        eye.page.get_by_role("button", name="Pair this phone").click()
        eye.page.get_by_role("link", name="all sent").wait_for()
        return eye

    return take


@pytest.fixture
def take_reader(open_context, yard):
    """Give a maker of paired phones that are set to Spanish."""
    said = speech_of("es").say

    def take(role="bench"):
        reader = Eye(open_context(locale="es-MX").new_page(), yard.server.base)
        reader.open(yard.server.link(role).removeprefix(yard.server.base))
        reader.read("pair by a link", TYPED)
        reader.page.get_by_label(said("you-name"), exact=True).fill("Mara")
        reader.page.get_by_role("button", name=said("phone-pair")).click()
        reader.page.get_by_role("link", name=said("phone-mark-sent")).wait_for()
        return reader

    return take


def test_every_kind_of_step_is_among_the_jobs(yard):
    known = (ROOT / "static" / "screens" / "job" / "steps" / "index.js").read_text("utf-8")
    forms = set(re.findall(r"^  (\w+): \w+Step,$", known, re.MULTILINE))
    assert sorted(forms - set(yard.jobs)) == []


def test_every_screen_holds_for_a_phone_that_does_jobs(take_eye, yard):
    eye = take_eye()
    shown = yard.addresses()
    assert without_example(eye.page, shown) == [], "give each new route an address in every_screen.py"
    for address in shown:
        eye.go(address)
        eye.look(address)
    eye.open(f"/U/{yard.code}")
    eye.look("a label opened by the phone's own camera")
    assert not eye.wrong, "\n".join(eye.wrong)


@pytest.mark.parametrize("role", ["bench", "counter"])
def test_every_screen_in_spanish_has_room_and_nothing_in_english(take_reader, yard, role):
    if role == "bench":
        take_reader("counter").page.close()  # a phone among the paired ones that can be put out
    reader = take_reader(role)
    shown = yard.addresses() if role == "bench" else [*AT_COUNTER, f"return/{yard.unit}"]
    for address in shown:
        reader.go(address)
        reader.read(f"{role} {address}", TYPED)
    assert not reader.wrong, "\n".join(reader.wrong)


def test_every_screen_holds_for_a_phone_at_the_counter(take_eye, yard):
    eye = take_eye("counter")
    for address in (*AT_COUNTER, f"return/{yard.unit}", f"code/{yard.code}/scanned"):
        eye.go(address)
        eye.look(f"counter {address}")
    assert not eye.wrong, "\n".join(eye.wrong)


def test_every_screen_holds_without_a_server(open_context, tmp_path):
    server = AloneApp(tmp_path)
    try:
        context = open_context()
        page = context.new_page()
        put_on_phone(page, server.base, proven(Core()))
        eye = Eye(page, server.base)
        eye.open("/")
        for address in (*ALONE, f"job/{JOB}", f"job/{JOB}/file", f"unit/{BAD}", f"unit/{BAD}/file"):
            eye.go(address)
            eye.look(f"alone {address}")
    finally:
        server.close()
    assert not eye.wrong, "\n".join(eye.wrong)


@pytest.mark.parametrize(("width", "height"), [(390, 844), (320, 640), (844, 390), (568, 320)])
def test_the_camera_is_seen_together_with_its_button(take_screens, width, height):
    driver = job_driver().begin()
    driver.test("rear-right-outer")
    phone = take_screens(width=width, height=height).holds(driver)
    page = phone.show(f"/#/job/{JOB}")
    phone.tap("Open the camera")
    phone.sees()
    button = page.get_by_role("button", name="Take left outer").bounding_box()
    picture = page.locator(".finder").bounding_box()
    assert picture["height"] >= 150
    assert picture["y"] >= 0
    assert picture["y"] + picture["height"] <= height
    assert button["y"] + button["height"] <= height
    apart = button["y"] >= picture["y"] + picture["height"] or button["x"] >= picture["x"] + picture["width"]
    assert apart, (picture, button)
