"""How long the page of what the jobs teach takes to open in a browser, with many jobs behind it.

    python -m tests.bench.lessons_page [--jobs 1000] [--times 9]

From the tap until all sections are drawn, the middle and the longest of so many times, each after another
screen; the goal is 300 ms. Beside it how large the answer is, and what server and browser together spent of
the processor, which other work on the machine stretches less. Nothing is asserted.

The phone does not fetch the jobs meanwhile: they come into the server's log, and its sync is cut.
"""

import argparse
import os
import statistics
import tempfile
import time
from contextlib import closing
from pathlib import Path

from playwright.sync_api import Page

from server.clock import now_ms
from server.lessons.figures import figures
from server.log import events
from tests.bench.reasoning import spent_ms
from tests.browser_support import launch
from tests.made_up_yard import Yard
from tests.static.app_server import AppServer

GOAL_MS = 300
MOST_AT_ONCE = 2000
# Goes to the page, and waits until it is drawn and painted.
_OPENED = """async () => {
  const begun = performance.now();
  location.hash = '#/lessons';
  await new Promise((resolve, reject) => {
    setTimeout(() => reject(new Error('not drawn')), 120000);
    const look = () => {
      if (document.querySelectorAll('.figures').length > 3) requestAnimationFrame(resolve);
      else requestAnimationFrame(look);
    };
    look();
  });
  return performance.now() - begun;
}"""


def opened(page: Page, times: int) -> tuple[list[float], list[float]]:
    """Open the page so often; return the time and the processor time that each took, in ms."""
    walls, spents = [], []
    for _ in range(times):
        page.evaluate("location.hash = '#/you'")
        page.get_by_role("link", name="What your jobs teach").wait_for()
        time.sleep(0.3)
        spent = spent_ms(os.getpid())
        walls.append(page.evaluate(_OPENED))
        spents.append(spent_ms(os.getpid()) - spent)
    return walls, spents


def main() -> int:
    """Print the figures."""
    wanted = argparse.ArgumentParser(description=__doc__.split("\n")[0])
    wanted.add_argument("--jobs", type=int, default=1000, metavar="N")
    wanted.add_argument("--times", type=int, default=9, metavar="N")
    asked = wanted.parse_args()
    with (
        tempfile.TemporaryDirectory() as scratch,
        closing(AppServer(Path(scratch))) as server,
        closing(launch()) as browser,
    ):
        page = browser.new_context(viewport={"width": 390, "height": 844}, locale="en-GB").new_page()
        page.goto(server.link("bench"))
        page.get_by_label("Your name").fill("Mara")
        page.get_by_role("button", name="Pair this phone").click()
        page.locator(".pill", has_text="all sent").wait_for(timeout=120_000)
        for path in ("sync", "news"):
            page.route(f"**/api/{path}", lambda route: route.abort())
        entries = Yard("page", asked.jobs).entries
        with closing(server.database()) as db:
            for start in range(0, len(entries), MOST_AT_ONCE):
                events.receive(db, entries[start : start + MOST_AT_ONCE], None, 1)
            figures(db, now_ms())
        size = page.evaluate("fetch('/api/lessons').then((each) => each.text()).then((text) => text.length)")
        walls, spents = opened(page, asked.times)
    print(f"{asked.jobs} jobs, answer of {size:,} bytes, goal {GOAL_MS} ms")
    print(f"middle {statistics.median(walls):.0f} ms, longest {max(walls):.0f} ms, "
          f"processor {statistics.median(spents):.0f} ms")  # fmt: skip
    return 0


if __name__ == "__main__":
    raise SystemExit(main())
