"""The last entry is taken back by one tap, for a while, then the one before; Back only leads out of a job."""

from contextlib import ExitStack
from contextlib import closing

import pytest

from tests.browser.mechanic import Mechanic
from tests.browser.pace import paced
from tests.browser.phone import Hands
from tests.browser.phone import held_in_hand
from tests.browser.seeded_job import NO_WORKER
from tests.browser_support import wait_until
from tests.static.app_server import AppServer

OUTER = "right outer"
# A busy machine may come to its next tap later than a hand would.
UNDO_STAYS = paced(("static/screens/frame/recorder.js", "UNDO_MS", 40))
# How far below the first one the middle of each part of the head stands.
MIDDLES = """() => {
  const head = document.querySelector(".screen-head");
  const boxes = [...head.children].map((part) => part.getBoundingClientRect());
  return boxes.map(({ top, height }) => Math.round(top + height / 2 - boxes[0].top - boxes[0].height / 2));
}"""

# In how many lines the words of a part stand.
LINES = """(of) => {
  const range = document.createRange();
  range.selectNodeContents(document.querySelector(of));
  return new Set([...range.getClientRects()].map(({ top }) => Math.round(top))).size;
}"""

SIZE = "(of) => parseFloat(getComputedStyle(document.querySelector(of)).fontSize)"


@pytest.fixture
def take_phone(screen_browser, tmp_path):
    """Give a phone out of its box and a link to pair it; by the end none may have complained."""
    taken = []
    # Closed also where the visit fails: a phone that goes on asks a server whose folder is gone.
    with ExitStack() as opened:
        server = opened.enter_context(closing(AppServer(tmp_path / "data")))

        def take(size=(390, 844), **options):
            context = screen_browser.new_context(**held_in_hand(size), **options)
            context.add_init_script(NO_WORKER)
            context.add_init_script(UNDO_STAYS)
            taken.append(opened.enter_context(closing(Hands(context, server.base))))
            return taken[-1], server.link()

        yield take
    assert [each for phone in taken for each in phone.complaints.heard] == []


@pytest.fixture
def phone(take_phone):
    """A paired phone."""
    phone, link = take_phone()
    phone.pairs(link)
    return phone


def opens(phone, address):
    """Tap the link to a screen behind the job's step."""
    links = phone.page.locator(".job-links summary")
    if not phone.page.locator(f"a[href$='{address}']").first.is_visible():
        links.tap()
    phone.page.locator(f"a[href$='{address}']").first.tap()
    wait_until(phone.page, "(end) => location.hash.endsWith(end)", address)


def undo(phone):
    return phone.page.get_by_role("button", name="Undo")


def looks(phone):
    """Record the look, with nothing unusual to be seen."""
    phone.wait_step("look")
    phone.tap("All as it should be")
    phone.wait_step("test")


def test_entries_of_one_go_are_taken_back_one_by_one_each_by_one_tap_for_a_minute(phone):
    mechanic = Mechanic(phone)
    mechanic.opens_a_job()
    mechanic.enters_a_test(OUTER)
    phone.wait_step("photo")

    # The head of a narrow phone keeps to one line beside it.
    phone.page.set_viewport_size({"width": 320, "height": 640})
    undo(phone).wait_for()
    assert phone.page.evaluate(MIDDLES) == [0, 0, 0, 0]
    assert phone.page.evaluate(SIZE, ".screen-title") >= 16
    phone.page.set_viewport_size({"width": 390, "height": 844})

    # A double tap takes one.
    undo(phone).dblclick()
    phone.wait_step("test")
    undo(phone).tap(timeout=20_000)
    phone.wait_step("look")
    # what was read stays read
    undo(phone).wait_for(state="detached")

    # What is older than a minute is no longer taken back after the last.
    looks(phone)
    # the clock of the page runs as ever, but for the minute that is jumped over
    phone.page.evaluate(
        "() => { const now = performance.now.bind(performance); performance.now = () => now() + 60_000; }"
    )
    mechanic.enters_a_test(OUTER)
    phone.wait_step("photo")
    undo(phone).tap()
    phone.wait_step("test")
    undo(phone).wait_for(state="detached")

    # A pull goes with its new label.
    mechanic.enters_a_test(OUTER)
    phone.wait_step("photo")
    phone.tap("Go on without")
    mechanic.starts("Exchange ")
    phone.wait_step("pull")
    title = mechanic.told()
    phone.tap("Write a code by hand")
    phone.tap("It is written")
    mechanic.leaves(title)
    undo(phone).tap()
    wait_until(phone.page, "(title) => document.querySelector('.instruction')?.innerText === title", title)
    assert phone.page.get_by_role("alert").count() == 0


def test_undo_goes_along_to_the_other_screens_of_the_job_and_the_history_says_so(phone):
    mechanic = Mechanic(phone)
    mechanic.opens_a_job()
    mechanic.enters_a_test(OUTER)
    phone.wait_step("photo")
    opens(phone, "/history")
    undo(phone).tap()
    phone.see("a slip")
    phone.page.get_by_label("Back").tap()
    mechanic.enters_a_test("left outer")
    phone.wait_step("photo")
    # What is corrected there is not what it takes back.
    opens(phone, "/history")
    phone.see("a slip")
    undo(phone).wait_for()
    phone.page.locator("button.list-row").first.tap()
    phone.page.get_by_label("Why was it wrong?").fill("Tapped too fast")
    phone.tap("Take it back")
    phone.see("Tapped too fast")
    assert undo(phone).count() == 0

    # And no further than the job.
    phone.page.get_by_label("Back").tap()
    mechanic.enters_a_test(OUTER)
    phone.wait_step("photo")
    undo(phone).wait_for()
    phone.page.get_by_label("Back").tap()
    phone.page.get_by_role("button", name="Open a job").wait_for()
    assert undo(phone).count() == 0


def test_the_head_keeps_to_one_line_in_the_language_with_the_longer_words_too(take_phone):
    phone, link = take_phone(size=(320, 640), locale="es-ES")
    page = phone.page
    page.goto(link)
    page.get_by_label("Tu nombre").fill("Ana")
    page.locator(".main-button").tap()
    phone.tap("Abrir un trabajo")
    page.get_by_label("Vehículo", exact=True).fill("Familiar")
    page.get_by_role("radio", name="Detrás, 4 sensores").tap()
    phone.tap("Abrir el trabajo")
    phone.wait_step("cautions")
    phone.tap("Lo he leído")
    phone.wait_step("look")
    phone.tap("Todo como debe ser")
    phone.wait_step("test")
    page.get_by_role("button", name="Deshacer").wait_for()

    assert page.evaluate(MIDDLES) == [0, 0, 0, 0]
    assert page.evaluate(LINES, ".screen-title") == 1
    assert page.evaluate(SIZE, ".screen-title") >= 16


def test_back_only_leads_out_of_a_job_and_each_step_begins_at_the_top(phone):
    page = phone.page
    page.set_viewport_size({"width": 320, "height": 420})

    def at_the_top():
        return page.locator("main").evaluate("(main) => main.scrollTop") == 0

    # A new job begins at its top, however far its form was scrolled.
    phone.tap("Open a job")
    page.get_by_label("Vehicle", exact=True).fill("Blue estate")
    page.get_by_role("radio", name="Rear, 4 sensors").tap()
    page.get_by_role("radio", name="Beeps without reason").tap()
    page.get_by_label("Part number").fill("PS-4711")
    assert page.locator("main").evaluate("(main) => main.scrollTop") > 100
    phone.tap("Open the job")
    phone.wait_step("cautions")
    assert at_the_top()
    phone.tap("I have read these")
    looks(phone)
    job = page.evaluate("location.hash")

    def is_out():
        wait_until(page, "(job) => !location.hash.startsWith(job)", job)

    def comes_back():
        page.locator(".job-list a").first.tap()
        phone.wait_step("test")

    # Never forward again, to where the job's Back came from.
    opens(phone, "/history")
    page.get_by_label("Back").tap()
    wait_until(page, "(job) => location.hash === job", job)
    page.go_back()
    is_out()

    # A button that leads back to the job leaves nothing to go back to.
    comes_back()
    opens(phone, "/ways")
    phone.tap("Go on with the job")
    wait_until(page, "(job) => location.hash === job", job)
    page.go_back()
    is_out()

    # A pause is taken back by one tap, and its step begins at the top.
    comes_back()
    opens(phone, "/ways")
    pauses(page)
    phone.wait_step("paused")
    assert at_the_top()
    undo(phone).tap()
    phone.wait_step("test")
    page.go_back()
    is_out()

    # After a pause the phone's own Back leads out of the job, not through its ways.
    comes_back()
    opens(phone, "/ways")
    pauses(page)
    phone.wait_step("paused")
    page.go_back()
    row = page.locator(".job-next")
    row.wait_for()
    is_out()
    assert row.inner_text().startswith("To order")


def pauses(page):
    """Pause the job for the first reason there is."""
    page.locator("[data-way=pause]").tap()
    page.get_by_role("radio").first.tap()
    page.locator(".main-button").tap()
