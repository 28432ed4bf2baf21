"""The screen stays lit while a job is on it, where the phone lets it."""

from tests.browser.seeded_job import job_driver
from tests.browser_support import wait_until
from tests.core.driver import JOB

LOCKS = """
window.locks = [];
Object.defineProperty(navigator, 'wakeLock', { value: { request: async (kind) => {
  const lock = { kind, released: false, release: async () => { lock.released = true; } };
  locks.push(lock);
  return lock;
} } });
"""
NONE_HELD = "locks.every(({ released }) => released)"


def test_the_screen_stays_lit_while_a_job_is_on_it(take_screens):
    phone = take_screens().holds(job_driver().begin())
    phone.context.add_init_script(LOCKS)
    page = phone.show()
    assert page.evaluate("locks") == []

    page.get_by_role("link", name="Blue estate").click()
    wait_until(page, "locks.length === 1")
    assert page.evaluate("locks.map(({ kind, released }) => [kind, released])") == [["screen", False]]
    # the browser takes it away when the page is hidden
    page.evaluate("() => { locks[0].released = true; }")
    page.evaluate("document.dispatchEvent(new Event('visibilitychange'))")
    wait_until(page, "locks.length === 2")
    page.evaluate("history.pushState(null, '', '/#/'); dispatchEvent(new Event('hashchange'))")

    wait_until(page, NONE_HELD)
    assert page.evaluate("locks.length") == 2


def test_a_phone_that_refuses_to_stay_lit_goes_on(take_screens):
    phone = take_screens().holds(job_driver().begin())
    phone.context.add_init_script(
        "navigator.wakeLock.request = async () => { throw new DOMException('low', 'NotAllowedError'); };"
    )
    page = phone.show(f"/#/job/{JOB}")
    page.locator("[data-step]").wait_for()
