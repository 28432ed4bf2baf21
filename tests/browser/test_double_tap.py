"""A finger that taps twice answers once: what the first tap brought is not answered by the second."""

import pytest

from tests.browser.phone_log import facts
from tests.browser.seeded_job import job_driver
from tests.core.driver import JOB

# Tap a button; once another screen stands there, say what the finger would tap now, and how long that took.
TAP = """([of, next]) => new Promise((resolve) => {
  const button = document.querySelector(of);
  const { x, y, width, height } = button.getBoundingClientRect();
  const tapped = performance.now();
  new MutationObserver((_, observer) => {
    if (document.querySelector('[data-step]')?.dataset.step !== next) return;
    observer.disconnect();
    const under = document.elementFromPoint(x + width / 2, y + height / 2)?.closest('button');
    resolve({ under: under?.innerText ?? '', after: performance.now() - tapped });
  }).observe(document.body, { subtree: true, childList: true, attributes: true });
  button.click();
})"""
A_DOUBLE_TAP = 250


def unheard():
    """Return a driver at the first check after a test that nobody heard."""
    driver = job_driver().begin()
    driver.test(heard=False)
    return driver


@pytest.mark.parametrize(
    ("at", "of", "following", "kind"),
    [
        (lambda: job_driver().open(), ".main-button", "look", "looked"),
        (unheard, ".answer", "sounder.sounder", "sounder_checked"),
    ],
    ids=["main button", "answer"],
)
def test_the_second_tap_answers_nothing_and_a_later_one_does(take_screens, at, of, following, kind):
    phone = take_screens().holds(at())
    page = phone.show(f"/#/job/{JOB}")
    page.locator(of).first.wait_for()

    seen = page.evaluate(TAP, [of, following])

    # Where the phone took longer than a finger, a tap is one of its own.
    assert seen["under"] == "" or seen["after"] > A_DOUBLE_TAP - 1
    before = [fact["kind"] for fact in facts(page)].count(kind)
    page.locator(of).first.click()
    page.locator(f"[data-step='{following}']").wait_for(state="detached")
    assert [fact["kind"] for fact in facts(page)].count(kind) == before + 1
