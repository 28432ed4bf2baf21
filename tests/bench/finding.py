"""What a phone with years of work takes to search, to begin a job and to show its list, by the clock.

    python -m tests.bench.finding [--jobs 2000] [--times 9]

From the tap or the last letter until what was asked for is drawn, the middle and the longest of so many
times; the goal is 300 ms. Beside it the middle of the processor time that the browser spent, which other work
on the machine stretches less. Nothing is asserted.
"""

import argparse
import os
import statistics
import tempfile
import time
from collections.abc import Callable
from contextlib import closing
from pathlib import Path

from playwright.sync_api import Page

from tests.bench.reasoning import spent_ms
from tests.browser.screens import screens
from tests.browser.yard import put_yard
from tests.browser_support import launch
from tests.many_jobs import Yard
from tests.static.app_server import AppServer

GOAL_MS = 300
# Taps or types, and waits until what is asked for is drawn.
_UNTIL_DRAWN = """async ([act, text, wanted]) => {
  const drawn = new Promise((resolve, reject) => {
    setTimeout(() => reject(new Error('not drawn: ' + wanted)), 20000);
    const look = () => {
      const found = [...document.querySelectorAll('h1, .job-list .list-title, .choice-word, label')];
      if (found.some((each) => each.textContent.trim() === wanted)) resolve();
      else requestAnimationFrame(look);
    };
    requestAnimationFrame(look);
  });
  const target = document.querySelector(act);
  if (text === null) target.click();
  else {
    target.value = text;
    target.dispatchEvent(new Event('input'));
  }
  await drawn;
}"""


class Stopwatch:
    """What each thing took, on the clock and of the processor, in ms."""

    def __init__(self, page: Page):
        """Measure on this page."""
        self.page = page
        self.took: dict[str, list[tuple[float, float]]] = {}

    def do(self, what: str, act: str, text: str | None, wanted: str) -> None:
        """Tap or type, until it is drawn."""
        begun, spent = time.perf_counter(), spent_ms(os.getpid())
        self.page.evaluate(_UNTIL_DRAWN, [act, text, wanted])
        wall = (time.perf_counter() - begun) * 1000
        self.took.setdefault(what, []).append((wall, spent_ms(os.getpid()) - spent))


def measured(page: Page, yard: Yard, show: Callable, times: int) -> Stopwatch:
    """Return what it took on a phone with this yard."""
    watch = Stopwatch(page)
    show()
    page.locator(".job-list a").first.wait_for(timeout=300_000)
    page.get_by_label("Search", exact=True).fill(yard.jobs[3]["vehicle"]["plate"])
    page.get_by_text("1 job found").wait_for(timeout=300_000)
    for job in yard.jobs[len(yard.jobs) // 20 :: max(1, len(yard.jobs) // times)][:times]:
        watch.do("search", "#job-search", job["vehicle"]["plate"], job["vehicle"]["name"])
    page.get_by_role("button", name="Clear the search").click()
    page.get_by_role("heading", name="Open jobs").wait_for()
    for _ in range(times):
        watch.do("open a job", ".main-button", None, "Vehicle")
        watch.do("list", ".screen-back", None, "Open jobs")
    return watch


def main() -> int:
    """Print the table."""
    wanted = argparse.ArgumentParser(description=__doc__.split("\n")[0])
    wanted.add_argument("--jobs", type=int, default=2000)
    wanted.add_argument("--times", type=int, default=9)
    asked = wanted.parse_args()
    with (
        tempfile.TemporaryDirectory() as scratch,
        closing(AppServer(Path(scratch))) as server,
        closing(launch()) as browser,
        screens(browser, server.base) as phone,
    ):
        yard = put_yard(phone.page, phone.base, asked.jobs)
        watch = measured(phone.page, yard, phone.show, asked.times)
    print(f"{asked.jobs} jobs, goal {GOAL_MS} ms   middle  longest  processor")
    for what, each in watch.took.items():
        wall, spent = ([one[at] for one in each] for at in (0, 1))
        figures = statistics.median(wall), max(wall), statistics.median(spent)
        print(f"{what:24} {figures[0]:8.0f} {figures[1]:8.0f} {figures[2]:10.0f}")
    return 0


if __name__ == "__main__":
    raise SystemExit(main())
