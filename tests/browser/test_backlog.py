"""Weeks of work without a network go to the server while the screen goes on as ever.

SWAPTRAIL_LONG=1 takes 10,000 entries and 500 pictures; how long it took and what was felt is printed.
"""

import json
import re
import time

from server.keeping.verify import examine
from tests.browser.backlog import put_backlog
from tests.browser.screens import screens
from tests.browser_support import wait_until
from tests.long_runs import times

ENTRIES = times(400, 10_000)
PICTURES = times(20, 500)
MOST_SECONDS = times(60, 1800)
# What a person feels: half a second of work in one go, and two seconds, from memory, until the next screen.
# One is counted in the processor's time, the other in frames of a sixtieth: a busy machine stretches both.
HANGS_MS = 500
HANGS_FRAMES = 120

# Whatever the screen says of the sending; at every frame, how long since the last and what a tap led to.
WATCH = """() => {
  const watch = { longest: 0, said: [], waiting: [], taps: [], tap: null, last: 0 };
  window.watch = watch;
  const words = (name) => document.querySelector(name)?.textContent.trim() ?? '';
  const note = (list, text) => { if (text && text !== list[list.length - 1]) list.push(text); };
  const says = () => {
    note(watch.said, words('.progress-words'));
    note(watch.waiting, words('.pill'));
  };
  says();
  new MutationObserver(says).observe(document.body, { subtree: true, childList: true, characterData: true });
  addEventListener('click', ({ timeStamp: at }) => {
    const heard = performance.now() - at;
    watch.tap = { at, heard, frames: 0, from: words('.screen-title'), pill: words('.pill') };
  }, true);
  const frame = (now) => {
    if (watch.last) watch.longest = Math.max(watch.longest, now - watch.last);
    watch.last = now;
    const { tap } = watch;
    if (tap) tap.frames += 1;
    if (tap && words('.screen-title') !== tap.from) {
      watch.taps.push({ ...tap, to: words('.screen-title'), shown: performance.now() - tap.at });
      watch.tap = null;
    }
    requestAnimationFrame(frame);
  };
  requestAnimationFrame(frame);
}"""
# Round and round: from what is not sent to this phone, the jobs, this phone, and back.
ROUND = (
    (".screen-back", "#/you"),
    (".screen-back", "#/"),
    (".pill", "#/you"),
    ("main a[href$='#/outbox']", "#/outbox"),
)


def no_network(environ, app):
    """Answer as a network does that does not reach the server."""
    return ("504 Gateway Timeout", "text/html", b"") if environ["PATH_INFO"].startswith("/api/") else None


def longest_work(trace: bytes) -> float:
    """Return for how many ms of the processor's time a page worked at one go at most."""
    events = json.loads(trace)["traceEvents"]
    names = {
        (each["pid"], each["tid"]): each["args"]["name"] for each in events if each["name"] == "thread_name"
    }
    worked = [
        each["tdur"]
        for each in events
        if "tdur" in each and names.get((each["pid"], each["tid"])) == "CrRendererMain"
    ]
    return max(worked) / 1000


def numbers(pattern, texts):
    """Return the numbers of each text that fits."""
    found = (re.search(pattern, text) for text in texts)
    return [[int(number) for number in match.groups()] for match in found if match]


def test_a_backlog_goes_with_progress_and_the_screen_stays_free(screen_browser, app_server, capsys):
    with screens(screen_browser, app_server.base, has_touch=True, is_mobile=True) as phone:
        phone.context.set_default_timeout(times(30_000, 120_000))  # to open, the app reads the whole log
        device = put_backlog(phone.context, app_server, ENTRIES, PICTURES)
        app_server.fault = no_network
        page = phone.show("/#/outbox")
        page.get_by_role(
            "heading", name=re.compile(rf"^\d+ jobs.* and {PICTURES} pictures not sent yet$")
        ).wait_for()
        page.get_by_text("Trying again in").wait_for()
        app_server.requests.clear()
        app_server.fault = None
        page.evaluate(WATCH)
        begun = time.monotonic()
        screen_browser.start_tracing(categories=["toplevel"])
        page.get_by_role("button", name="Send now").tap()

        goes_round_until_sent(page)

        worked = longest_work(screen_browser.stop_tracing())
        took = time.monotonic() - begun
        watch = page.evaluate("watch")
        page.goto(f"{app_server.base}/#/outbox")
        page.get_by_role("heading", name="All sent").wait_for()
        # The browser notes the lost network, and each picture that the server was asked for and lacked.
        assert [said for said in phone.complaints.heard if not re.search("status of (504|404)", said)] == []
        phone.complaints.heard.clear()

    busy = [tap for tap in watch["taps"] if "sending" in tap["pill"]]
    heard = max(tap["heard"] for tap in busy)
    slowest = max(busy, key=lambda tap: tap["frames"])
    with capsys.disabled():
        print(
            f"\n{ENTRIES} entries, {PICTURES} pictures: {took:.1f} s; longest gap between frames "
            f"{watch['longest']:.0f} ms, longest work at one go {worked:.0f} ms; {len(busy)} taps meanwhile, "
            f"heard after at most {heard:.0f} ms, next screen after at most {slowest['shown']:.0f} ms, "
            f"{slowest['frames']} frames (to {slowest['to']})"
        )
    assert worked < HANGS_MS
    assert slowest["frames"] < HANGS_FRAMES

    left = numbers(r"sending (\d+)", watch["waiting"])
    assert left == sorted(left, reverse=True)
    assert len(left) > PICTURES / 2
    said = numbers(r"(\d+) of (\d+) entries, (\d+) of (\d+) pictures", watch["said"])
    assert said == sorted(said)
    assert {(of_entries, of_pictures) for _, of_entries, _, of_pictures in said} == {(ENTRIES, PICTURES)}

    assert app_server.rows("SELECT seq, device FROM events ORDER BY n") == [
        (seq, device) for seq in range(1, ENTRIES + 1)
    ]
    assert app_server.rows("SELECT count(*), count(DISTINCT sha256) FROM photos") == [(PICTURES, PICTURES)]
    puts = [request.path for request in app_server.requests if request.method == "PUT"]
    assert (len(puts), len(set(puts))) == (PICTURES, PICTURES)
    assert examine(app_server.data).fault is None


def goes_round_until_sent(page):
    """Tap from screen to screen until nothing waits."""
    until = time.monotonic() + MOST_SECONDS
    while True:
        for aim, address in ROUND:
            if page.evaluate("/all sent/.test(document.querySelector('.pill').textContent)"):
                return
            assert time.monotonic() < until, page.locator(".pill").inner_text()
            page.locator(aim).tap()
            wait_until(page, f"location.hash === '{address}' && watch.tap === null", seconds=60)
            page.wait_for_timeout(300)
