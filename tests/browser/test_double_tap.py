"""A finger that taps twice answers once: what the first tap brought is not answered by the second."""

import pytest

from tests.browser.phone_log import facts
from tests.browser.seeded_job import job_driver
from tests.core.driver import JOB

# Tap a button, and keep the page busy for a while, as a slow phone is; once another screen stands there,
# say what the finger would tap now, when it has just been painted.
TAP = """([of, next, busy]) => new Promise((resolve) => {
  const button = document.querySelector(of);
  const { x, y, width, height } = button.getBoundingClientRect();
  const at = () => document.elementFromPoint(x + width / 2, y + height / 2);
  const under = () => at()?.closest('button')?.innerText ?? '';
  new MutationObserver((_, observer) => {
    if (document.querySelector('[data-step]')?.dataset.step !== next) return;
    observer.disconnect();
    const drawn = under();
    requestAnimationFrame(() => resolve([drawn, under()]));
  }).observe(document.body, { subtree: true, childList: true, attributes: true });
  button.click();
  for (const until = performance.now() + busy; performance.now() < until; );
})"""
LONGER_THAN_A_DOUBLE_TAP = 300


def unheard():
    """Return a driver at the first check after a test that nobody heard."""
    driver = job_driver().begin()
    driver.test(heard=False)
    return driver


@pytest.mark.parametrize("busy", [0, LONGER_THAN_A_DOUBLE_TAP], ids=["as it is", "slow phone"])
@pytest.mark.parametrize(
    ("at", "of", "following", "kind"),
    [
        (lambda: job_driver().open(), ".main-button", "look", "looked"),
        (unheard, ".answer", "sounder.sounder", "sounder_checked"),
    ],
    ids=["main button", "answer"],
)
def test_the_second_tap_answers_nothing_and_a_later_one_does(take_screens, at, of, following, kind, busy):
    phone = take_screens().holds(at())
    page = phone.show(f"/#/job/{JOB}")
    page.locator(of).first.wait_for()

    assert page.evaluate(TAP, [of, following, busy]) == ["", ""]

    before = [fact["kind"] for fact in facts(page)].count(kind)
    page.locator(of).first.click()
    page.locator(f"[data-step='{following}']").wait_for(state="detached")
    assert [fact["kind"] for fact in facts(page)].count(kind) == before + 1
