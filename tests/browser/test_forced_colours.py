"""A phone that gives all colours itself: words and drawings stand on its ground, whatever the theme."""

import pytest

from tests.browser.seeded_job import job_driver
from tests.core.driver import JOB
from tests.core.scenarios import follows

DRAWN = {
    ".trail-suspect": "stroke",
    ".trail-code": "fill",
    ".mark-clean .mark-body": "stroke",
    ".mark-clean .mark-sign": "stroke",
    ".mark-fault .mark-body": "stroke",
    ".mark-fault .mark-sign": "stroke",
}
# What a word or a line has, beside what it stands on.
_COLOURS = """([of, what]) => {
  const drawn = document.querySelector(of);
  const probe = document.body.appendChild(document.createElement('p'));
  probe.style.cssText = 'color: CanvasText; background: Canvas';
  const { color: ink, backgroundColor: ground } = getComputedStyle(probe);
  probe.remove();
  return { drawn: getComputedStyle(drawn)[what], ink, ground };
}"""


@pytest.fixture
def page(take_screens):
    """Give the trail of a fault that followed, by a light theme on a phone whose own ground is dark."""
    driver = job_driver()
    follows(driver)
    phone = take_screens(width=320, height=640, forced_colors="active", color_scheme="dark").holds(driver)
    phone.context.add_init_script("localStorage.setItem('swaptrail.theme', 'light');")
    page = phone.show(f"/#/job/{JOB}/trail")
    page.locator(".trail-suspect:visible").first.wait_for()
    return page


def test_lines_of_drawings_have_the_ink_of_the_phone(page):
    seen = {of: page.evaluate(_COLOURS, [of, what]) for of, what in DRAWN.items()}

    assert {of: each["drawn"] for of, each in seen.items()} == {of: each["ink"] for of, each in seen.items()}
    assert all(each["ink"] != each["ground"] for each in seen.values())


def test_no_word_has_the_ground_of_the_phone_which_it_puts_behind_each(page):
    ground = page.evaluate(_COLOURS, ["body", "color"])["ground"]
    lost = page.evaluate(
        """(ground) => [...document.querySelectorAll('.screen *')]
          .filter((each) => !each.closest('svg') && each.textContent.trim())
          .filter((each) => getComputedStyle(each).color === ground)
          .map((each) => each.className || each.tagName)""",
        ground,
    )
    assert lost == []
