"""How long folding takes as the log grows, and what a correction and a late entry cost on a phone.

    python -m tests.bench.fold             everything (a few minutes)
    python -m tests.bench.fold --quick     logs of up to 10,000 entries

The log is that of tests/bench/workshop.py. Times are processor time of the process at work, which a busy
machine does not stretch; for the phone, that of all processes of its browser together, so its figures are
on the high side, and beside it the time on the clock. In CPython, folding is what a server does with
entries in hand, measured with and without Python's collector, which goes over all that is in memory again
and again whatever the fold does. On the phone it is what it does at a start without a snapshot: the whole log
goes over as the app hands it over (static/core/compact.js). A late entry is one of another phone that has a
place before entries not sent yet. Goals stand beside the figures; nothing is asserted.
"""

import argparse
import gc
import json
import os
import tempfile
import time
from contextlib import contextmanager
from pathlib import Path

from server.core.host import Host
from tests.bench import workshop
from tests.bench.reasoning import spent_ms
from tests.browser_support import launch
from tests.hosts import PhoneHost
from tests.server.phone import entry_of
from tests.static.app_server import AppServer
from tests.static.phone_parts import open_bare
from tests.static.phone_parts import start_parts

SHORT, PHONE, CORRECTED, LONG = 1_000, 10_000, 20_000, 100_000
GOAL_LONG_S, GOAL_RATIO, GOAL_PHONE_S, GOAL_CHECK_S = 3.0, 1.3, 0.7, 0.3
OWN_UNSENT = 20
_AT_ONCE = 2_000

_SEED = """async ([entries, unsent]) => {
  await store.write(['meta', 'events'], async (tx) => {
    const events = tx.objectStore('events');
    const writes = entries.map(({ event, hash }) => {
      const { device, seq, job } = event;
      const place = unsent ? { own: 1, unsent: seq } : { n: (window.lastN = (window.lastN ?? 0) + 1) };
      return events.add({ device, seq, hash, event, ...place, ...(job ? { job } : {}) });
    });
    await Promise.all(writes);
  });
}"""
_CATCH_UP = """async () => {
  const begun = performance.now();
  await log.catchUp();
  return performance.now() - begun;
}"""


def in_cpython(entries: list[dict], *, collecting: bool) -> float:
    """Return seconds of processor time to fold entries in hand, garbage collected meanwhile or not."""
    host = Host()
    gc.collect()
    if not collecting:
        gc.disable()
    try:
        begun = time.process_time()
        host.op_reset(entries)
        return time.process_time() - begun
    finally:
        gc.enable()


def in_phone(phone: PhoneHost, texts: list[str]) -> tuple[float, float]:
    """Return seconds of processor time and on the clock that the phone's host takes over these calls."""
    phone.page.evaluate("(texts) => { window.texts = texts; }", texts)
    before = spent_ms(os.getpid())
    taken = phone.page.evaluate(
        """async () => {
          const begun = performance.now();
          await askCore(texts);
          return performance.now() - begun;
        }"""
    )
    return (spent_ms(os.getpid()) - before) / 1000, taken / 1000


def corrections(entries: list[dict]) -> dict[str, dict]:
    """Return drafts that take something back: of the newest job, of an old one, of none."""
    host = Host()
    host.op_reset(entries)
    found = {}
    wanted = (("in the newest job", reversed(entries)), ("in the first job", entries), ("of no job", entries))
    for name, among in wanted:
        for entry in among:
            event = entry["event"]
            kind = "unit_added" if name == "of no job" else "photo_taken"
            if event["kind"] != kind:
                continue
            data = {"device": event["device"], "seq": event["seq"], "reason": "A slip."}
            found[name] = {"kind": "corrected", "job": event["job"], "actor": "Mara", "data": data}
            break
    return found


@contextmanager
def phone_with(entries: list[dict]):
    """Start the parts of a phone's app on entries from the server and a few own ones after them, unsent."""
    with tempfile.TemporaryDirectory() as folder:
        server = AppServer(Path(folder))
        browser = launch()
        try:
            page = open_bare(browser.new_context(), server.base)
            start_parts(page)
            for at in range(0, len(entries), _AT_ONCE):
                page.evaluate(_SEED, [entries[at : at + _AT_ONCE], False])
            device = "d00000000000000b1"
            own: list[dict] = []
            for seq in range(1, OWN_UNSENT + 1):
                own.append(_spare(device, seq, own[-1]["hash"] if own else ""))
            page.evaluate(_SEED, [own, True])
            yield page
        finally:
            browser.close()
            server.close()


def late_entry(page) -> tuple[float, float]:
    """Return seconds of processor time and on the clock until one foreign entry is folded in its place."""
    page.evaluate(_CATCH_UP)
    page.evaluate(_SEED, [[_spare("d00000000000000b2", 1, "")], False])
    before = spent_ms(os.getpid())
    taken = page.evaluate(_CATCH_UP)
    return (spent_ms(os.getpid()) - before) / 1000, taken / 1000


def main() -> int:
    """Print the figures beside their goals."""
    parser = argparse.ArgumentParser(description="how folding grows with the log")
    parser.add_argument("--quick", action="store_true", help="logs of up to 10,000 entries")
    asked = parser.parse_args()
    print(f"load of the machine before: {os.getloadavg()[0]:.1f}", flush=True)
    entries = workshop.log(PHONE if asked.quick else LONG)
    phone = PhoneHost()
    try:
        _cpython(entries)
        _phone(phone, entries)
        if not asked.quick:
            _corrected(phone, entries[:CORRECTED])
    finally:
        phone.close()
    with phone_with(entries[:PHONE]) as page:
        print(f"phone, a late entry before {OWN_UNSENT} unsent ones, {PHONE:,} entries: "
              f"{_both(late_entry(page))}")  # fmt: skip
    print(f"load of the machine after: {os.getloadavg()[0]:.1f}")
    return 0


def _cpython(entries: list[dict]) -> None:
    for collecting in (True, False):
        per_entry = {}
        for count in (SHORT, PHONE, LONG):
            if count > len(entries):
                continue
            times = 5 if count == SHORT else 2
            seconds = min(in_cpython(entries[:count], collecting=collecting) for _ in range(times))
            per_entry[count] = seconds / count
            goal = f" (goal {GOAL_LONG_S} s)" if count == LONG else ""
            ratio = per_entry[count] / per_entry[SHORT]
            print(f"cpython, {'' if collecting else 'garbage left, '}fold {count:7,}: {seconds:.3f} s{goal}, "
                  f"{per_entry[count] * 1e6:.1f} us an entry, {ratio:.2f} times that at {SHORT:,} "
                  f"(goal {GOAL_RATIO})", flush=True)  # fmt: skip


def _phone(phone: PhoneHost, entries: list[dict]) -> None:
    for count in (SHORT, PHONE):
        phone.page.evaluate("(entries) => { window.entries = entries; }", entries[:count])
        best = min(in_phone(phone, _compact(phone, "reset")) for _ in range(3))
        read = min(in_phone(phone, _compact(phone, "read and answer that there is none")) for _ in range(3))
        goal = f" (goal {GOAL_PHONE_S} s)" if count == PHONE else ""
        print(
            f"phone, fold {count:7,}: {_both(best)}{goal}; reading the text alone {_both(read)}", flush=True
        )


def _compact(phone: PhoneHost, op: str) -> list[str]:
    """Return the call with the page's entries as the app hands them over."""
    text = phone.page.evaluate(
        """async (op) => {
          const { compactText } = await import('/app/core/compact.js');
          const compact = compactText({ envelopes: entries.map(({ event }) => event) });
          return `{"op":${JSON.stringify(op)},"compact":${compact}}`;
        }""",
        op,
    )
    return [text]


def _corrected(phone: PhoneHost, entries: list[dict]) -> None:
    in_phone(phone, [_call("reset", events=entries)])
    assert json.loads(phone.call('{"op": "conflicts"}'))["value"]["not_understood"] == []
    for name, draft in corrections(entries).items():
        taken = in_phone(phone, [_call("check", events=[draft])])
        print(f"phone, check a correction {name}, {CORRECTED:,} entries: {_both(taken)} "
              f"(goal {GOAL_CHECK_S} s)", flush=True)  # fmt: skip


def _call(op: str, **arguments) -> str:
    return json.dumps({**arguments, "op": op}, ensure_ascii=False)


def _both(seconds: tuple[float, float]) -> str:
    return f"{seconds[0]:.2f} s of processor, {seconds[1]:.2f} s on the clock"


def _spare(device: str, seq: int, prev: str) -> dict:
    data = {"unit": f"u{device[-2:]}{seq:010}", "part": "PS-1", "serial": "", "code": "", "how": "tapped",
            "place": "stock"}  # fmt: skip
    event = {"device": device, "seq": seq, "prev": prev, "v": 1, "at": workshop.START, "actor": "Mara",
             "job": None, "kind": "unit_added", "data": data}  # fmt: skip
    return entry_of(event)


if __name__ == "__main__":
    raise SystemExit(main())
