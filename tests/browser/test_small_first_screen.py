"""The first screen of the smallest phone holds what is to be done now; what else could be comes after it."""

import pytest

from tests.browser.seeded_job import job_driver
from tests.browser.test_exchange_screens import after_the_swap
from tests.browser.test_exchange_screens import at_first_fit
from tests.browser.test_exchange_screens import right_and_wrong
from tests.core.driver import JOB
from tests.core.scenarios import both_places
from tests.core.scenarios import single
from tests.core.scenarios import vanished

OUTER = "rear-right-outer"
LANGUAGES = ("en-GB", "es-ES")

# In how many lines each of these parts of a text stands, wherever it is found.
LINES = """(words) => {
  const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  const lines = [];
  while (texts.nextNode()) {
    const start = texts.currentNode.data.indexOf(words);
    if (start < 0 || !texts.currentNode.parentElement.checkVisibility()) continue;
    const range = document.createRange();
    range.setStart(texts.currentNode, start);
    range.setEnd(texts.currentNode, start + words.length);
    lines.push(new Set([...range.getClientRects()].map(({ top }) => Math.round(top))).size);
  }
  return lines;
}"""
LINES_OF = """(of) => {
  const tops = new Set();
  const texts = document.createTreeWalker(document.querySelector(of), NodeFilter.SHOW_TEXT);
  const range = document.createRange();
  while (texts.nextNode()) {
    range.selectNodeContents(texts.currentNode);
    for (const { top, width } of range.getClientRects()) if (width) tops.add(Math.round(top));
  }
  return tops.size;
}"""
# What of a screen's body is seen before it is scrolled.
SEEN = """(of) => {
  const part = document.querySelector(of).getBoundingClientRect();
  const body = document.querySelector('main').getBoundingClientRect();
  return part.height > 0 && part.top >= body.top && part.bottom <= body.bottom;
}"""
# Whether enough of it is seen to tell that it goes on below.
BEGINS = """(of) => {
  const { bottom } = document.querySelector('main').getBoundingClientRect();
  return document.querySelector(of).getBoundingClientRect().top < bottom - 8;
}"""

TWICE = "() => { document.documentElement.style.fontSize = '225%'; }"


@pytest.fixture
def small(take_screens):
    """Give a maker of the smallest phones, each at a driver's job."""

    def make(driver, part="", locale="en-GB"):
        phone = take_screens(width=320, height=640, locale=locale).holds(driver)
        return phone.show(f"/#/job/{JOB}{part}")

    return make


def driven(how):
    """Return a driver whose job went like this."""
    driver = job_driver()
    how(driver)
    return driver


@pytest.mark.parametrize("locale", LANGUAGES)
def test_a_check_of_the_wiring_comes_before_its_repair_and_before_what_led_to_it(small, locale):
    page = small(after_the_swap(OUTER), locale=locale)
    page.locator(".harness").wait_for()

    assert page.evaluate(SEEN, "h1")
    assert page.evaluate(SEEN, ".step .lead")
    assert page.evaluate(SEEN, ".caution-line")
    for reads in ("good", "bad", "unclear"):
        assert page.evaluate(SEEN, f"[data-reads={reads}]")
    assert page.locator(".screen-foot button").count() == 0
    order = page.evaluate(
        """() => ['[data-reads=good]', '[data-reads=bad]', '.harness', '.step .ways button', '.verdict']
          .map((of) => document.querySelector(of).getBoundingClientRect().top)"""
    )
    assert order == sorted(order)


@pytest.mark.parametrize("locale", LANGUAGES)
def test_a_long_measurement_scrolls_behind_its_answers_and_its_figure_is_typed_above_them(small, locale):
    driver = after_the_swap(OUTER)
    while not driver.step()["expects"]["units"]:
        driver.choose(0)
    page = small(driver, locale=locale)
    page.locator(".harness").wait_for()

    assert page.evaluate(SEEN, ".caution-line")
    for reads in ("good", "bad", "unclear"):
        assert page.evaluate(SEEN, f"[data-reads={reads}]")
    page.locator(".measured").first.focus()
    assert page.evaluate(
        """() => {
          const field = document.querySelector('.measured').getBoundingClientRect();
          return field.bottom <= document.querySelector('.answers').getBoundingClientRect().top;
        }"""
    )


@pytest.mark.parametrize("locale", LANGUAGES)
def test_what_a_test_of_a_fault_that_comes_and_goes_showed_is_one_of_the_answers_in_sight(small, locale):
    driver = job_driver().begin()
    driver.test(OUTER, came_and_went=True)
    driver.photograph()
    driver.start_exchange()
    driver.guided()
    page = small(driver, locale=locale)
    page.locator("[data-provoked]").wait_for()

    for answer in page.locator("[data-answer]").all():
        assert page.evaluate(SEEN, f"[data-answer={answer.get_attribute('data-answer')}]")


def test_with_text_of_twice_the_size_answers_scroll_and_the_page_is_no_longer_than_the_screen(small):
    page = small(at_first_fit())
    page.locator(".board").wait_for()
    page.evaluate(TWICE)
    assert page.evaluate("() => document.documentElement.scrollHeight <= innerHeight")

    driver = after_the_swap(OUTER)
    page = small(driver)
    page.locator("[data-reads]").first.wait_for()
    page.evaluate(TWICE)

    assert page.evaluate(BEGINS, ".step .lead")
    assert not page.evaluate(BEGINS, "[data-reads=unclear]")


@pytest.mark.parametrize("locale", LANGUAGES)
def test_a_fault_is_tapped_on_the_board_before_anything_is_scrolled(small, locale):
    page = small(job_driver().begin(), locale=locale)
    mark = page.locator(f".board-spot[data-position={OUTER}]")
    mark.wait_for()

    assert page.evaluate(SEEN, f".board-spot[data-position={OUTER}]")
    box = mark.locator(".mark-shape").bounding_box()
    page.mouse.click(box["x"] + box["width"] / 2, box["y"] + box["height"] / 2)

    page.locator(f".board-spot[data-position={OUTER}] .mark-fault").wait_for()


def test_names_that_stand_apart_from_the_picture_leave_its_move_in_sight(small):
    page = small(driven(both_places), locale="es-ES")
    page.locator(".main-button:not(:disabled)").wait_for()

    assert page.evaluate(BEGINS, ".board-list li:last-child")
    assert page.evaluate(SEEN, ".board-drawing")
    assert page.locator(".board-key").first.is_visible()


@pytest.mark.parametrize("locale", LANGUAGES)
def test_a_stop_offers_the_way_out_of_a_mixup_on_its_first_screen(small, locale):
    driver = at_first_fit()
    page = small(driver, locale=locale)
    page.locator(".other-button").click()
    page.locator(".field-code").fill(right_and_wrong(driver)[1])
    page.locator(".main-button").click()
    page.locator(".stop").wait_for()

    assert page.evaluate(SEEN, ".stop")
    assert page.evaluate(SEEN, ".stop + .link-button")


def test_a_repair_among_the_moves_says_once_what_it_is(small):
    page = small(driven(both_places), "/moves")
    page.get_by_text("more moves").click()
    repair = page.locator(".move", has_text="Find and repair the wiring").first

    assert repair.inner_text().count("Find and repair") == 1


def test_a_short_word_is_not_broken_at_its_hyphen(small):
    page = small(driven(vanished))
    page.locator("h1", has_text="self-test").wait_for()

    found = page.evaluate(LINES, "self-test")
    assert found
    assert set(found) == {1}


@pytest.mark.parametrize("locale", LANGUAGES)
def test_the_button_of_an_exchange_names_the_two_in_three_lines(small, locale):
    page = small(driven(single), locale=locale)
    page.locator(".main-button:not(:disabled)").wait_for()

    assert page.evaluate(LINES_OF, ".main-button") <= 3
