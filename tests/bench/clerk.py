"""What the clerk's set costs at a counter: taps, keys, seconds a unit, and what is decided wrongly.

    python -m tests.bench.clerk              all 120 returns
    python -m tests.bench.clerk --only 20    the first of them

A practised clerk in a real browser with a wide screen: every other part is held before the camera and
decided by a tap, the others are read by a hand scanner that types and decided by a key. A tap is a touch of
any control, a key one that the clerk presses; what the scanner types is none. The time of a unit is from its
label in view, or scanned, to its decision on record. Figures, never asserted.
"""

import argparse
import json
import statistics
import sys
import tempfile
import time
from collections import Counter
from collections import namedtuple
from pathlib import Path

from server.clock import now_ms
from server.core.codes.labels import address
from tests.browser import phone_log
from tests.browser.clerk import Clerk
from tests.browser.phone import label_picture
from tests.browser.phone import qr_picture
from tests.browser.returned import put_on_server
from tests.browser_support import wait_until
from tests.clerks_set import DECISIONS
from tests.clerks_set import ELSEWHERE
from tests.clerks_set import PART
from tests.clerks_set import ClerksSet
from tests.clerks_set import phone_of
from tests.static.app_server import AppServer
from tests.static.symbols import DATA_MATRIX
from tests.static.symbols import envelope
from tests.static.symbols import symbol

_KEYS = {"accept": "F2", "hold": "F8", "refuse": "F9"}
_SEPARATORS = ("ctrl", "alt", "raw", "arrows")
_LOOK_SECONDS = 5.2  # longer than one look at a part lasts
_LINGERS_SECONDS = 2.5  # longer than the picture of it is in turn
_PROPOSED = """() => {
  const card = document.querySelector('.proposal');
  return card && [card.querySelector('.code')?.textContent, card.dataset.proposed];
}"""

#: What one unit came to.
Done = namedtuple("Done", ["shown", "by", "proposed", "taps", "keys", "seconds"])


class Counted(Clerk):
    """A clerk with camera and hand scanner who keeps count."""

    def begins(self, shown):
        """Pair, change what is on this phone of records that were altered, open the camera."""
        self.comes_to_the_counter()
        for each in shown:
            if each.wrong == "altered record":
                self.alters_a_record(phone_of(each.number))
        self.page.reload()
        self.phone.tap("Scan returns")

    def taps_on(self, words):
        """Touch a button."""
        self.taps += 1
        self.phone.tap(words)

    def does(self, each, number):
        """Take one return in, from its label to the decision on it, and return what it came to."""
        by = "camera" if number % 2 == 0 else "hand scanner"
        self.taps = self.keys = 0
        if each.wrong == "lingering label":
            return Done(each, by, self._lingers(each), 0, 0, 0.0)
        began = time.monotonic()
        shows = self._before_the_camera if by == "camera" else self._to_the_scanner
        waited = shows(each, number)
        proposed = self._proposed(each)
        if each.compared and proposed == "hold":
            self.taps_on("It is the same part" if each.compared == "same" else "It is another part")
            proposed = self._changed_from(proposed)
        self._decides(each, proposed, by)
        return Done(each, by, proposed, self.taps, self.keys, time.monotonic() - began - waited)

    def _text(self, each):
        return each.label if each.label.startswith(ELSEWHERE) else address(each.label, self.server.base)

    def _before_the_camera(self, each, number):
        text = self._text(each)
        label = qr_picture(text) if text == each.label else label_picture(each.label, self.server.base)
        bag = symbol(envelope(f"1P{PART}", f"S{each.serial or 'SN-999'}"), DATA_MATRIX)
        self.phone.camera.show(*([label, bag] if each.serial else [label]))
        return self._next_bag(each, lambda: self.phone.camera.show(bag))

    def _to_the_scanner(self, each, number):
        self.phone.lower()
        self.wedge.scans(self._text(each))
        separators = _SEPARATORS[number // 2 % 4]
        bag = envelope(f"1P{PART}", f"S{each.serial or 'SN-999'}")
        if each.serial:
            self.wedge.scans(bag, separators=separators)
        return self._next_bag(each, lambda: self.wedge.scans(bag, separators=separators))

    def _next_bag(self, each, shows_it):
        """Let the bag of the part after it come by; return the seconds that were waited on purpose."""
        if each.wrong != "next bag":
            return 0.0
        self._proposed(each)
        self.phone.lower()
        self.page.wait_for_timeout(1000 * _LOOK_SECONDS)
        shows_it()
        self.phone.see("Which part is this symbol on?")
        self.phone.lower()
        self.taps_on("On another one")
        return _LOOK_SECONDS

    def _proposed(self, each):
        """Wait for the card of this label, and for what was read off the part with it."""
        code = each.label.removeprefix(ELSEWHERE)
        shown = f"{code[:3]}-{code[3:]}"
        wait_until(self.page, f"(shown) => ({_PROPOSED})()?.[0] === shown", shown, seconds=30)
        wants = each.proposed or "refuse"
        ends = time.monotonic() + 30
        while self.page.evaluate(_PROPOSED)[1] != wants and time.monotonic() < ends and not each.compared:
            self.page.wait_for_timeout(20)
        return self.page.evaluate(_PROPOSED)[1]

    def _changed_from(self, proposed):
        wait_until(self.page, f"(before) => ({_PROPOSED})()?.[1] !== before", proposed, seconds=15)
        return self.page.evaluate(_PROPOSED)[1]

    def _decides(self, each, proposed, by):
        if by == "camera":
            self.taps += 1
            self.page.locator(".main-button").tap()
        else:
            self.keys += 1
            self.page.keyboard.press(_KEYS[proposed])
        wait_until(self.page, "() => document.querySelector('.decided')", seconds=30)

    def _lingers(self, each):
        """Leave what was just decided in view, or scan nothing more: no card may come of it."""
        self.page.wait_for_timeout(1000 * _LINGERS_SECONDS)
        card = self.page.evaluate(_PROPOSED)
        return card and card[1]

    def decisions(self):
        """Return how many went on record."""
        return len([each for each in phone_log.facts(self.page) if each["kind"] == "return_decided"])


def run(choose=lambda shown: shown, progress=lambda done: None):
    """Take in what `choose` leaves of the set; return what each unit came to."""
    the_set = ClerksSet(now_ms())
    shown = choose(the_set.shown)
    done = []
    with tempfile.TemporaryDirectory() as folder:
        server = AppServer(Path(folder) / "data")
        put_on_server(server, the_set.entries)
        clerk = Counted(Path(folder) / "clerk", server, size=(1280, 800))
        try:
            clerk.begins(shown)
            for number, each in enumerate(shown):
                try:
                    done.append(clerk.does(each, number))
                except AssertionError as error:
                    raise AssertionError(f"{each}:\n{clerk.phone.text()}") from error
                progress(done[-1])
            assert clerk.decisions() == len([each for each in shown if each.wrong != "lingering label"])
        finally:
            clerk.phone.close()
            server.close()
    return done


def main() -> int:
    """Print the figures."""
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    parser.add_argument("--only", type=int, help="so many returns, the first of the set")
    asked = parser.parse_args()

    def progress(done):
        right = done.proposed == done.shown.proposed
        if not right or done.shown.wrong:
            print(
                f"{'' if right else 'WRONG '}{done.shown.wrong or 'right'}, {done.by}: {done.proposed}",
                "" if right else done.shown,
                flush=True,
            )

    done = run(lambda shown: shown[: asked.only], progress)
    said = Counter(
        DECISIONS.get(each.proposed, "wrong holds") for each in done if each.proposed != each.shown.proposed
    )
    print(json.dumps({"returns": len(done), "wrong": sum(bool(each.shown.wrong) for each in done)}))
    print(", ".join(f"{said[what]} {what}" for what in (*DECISIONS.values(), "wrong holds")))
    for by in ("camera", "hand scanner"):
        units = [each for each in done if each.by == by and each.shown.wrong != "lingering label"]
        seconds = sorted(each.seconds for each in units)
        if units:
            print(
                f"{by:13} {len(units):4} units, {sum(each.taps for each in units) / len(units):.2f} taps, "
                f"{sum(each.keys for each in units) / len(units):.2f} keys, "
                f"{statistics.median(seconds):.2f} s in the middle, {seconds[-1]:.2f} s at most"
            )
    return 0


if __name__ == "__main__":
    sys.exit(main())
