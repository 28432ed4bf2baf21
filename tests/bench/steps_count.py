"""A finger that keeps count: each tap, each character typed, each screen it is shown, each word on it."""

import re
import time
from collections import namedtuple

from tests.browser.phone import Phone

#: What one screen cost: its step and heading, the taps and characters spent on it, the words it showed.
Seen = namedtuple("Seen", ["step", "heading", "taps", "characters", "words"])

_WATCH = """(() => {
  window.changedAt = 0;
  const watch = () => new MutationObserver(() => { window.changedAt = performance.now(); })
    .observe(document, { subtree: true, childList: true, attributes: true, characterData: true });
  watch();
})()"""

# Words that can be read, wherever one would have to scroll; what is only for a reader aloud has no room.
_VIEW = """() => {
  const seen = [];
  const text = [];
  const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  const range = document.createRange();
  while (texts.nextNode()) {
    const node = texts.currentNode;
    const around = node.parentElement;
    if (!node.data.trim() || around.closest('.aloud')) continue;
    if (getComputedStyle(around).clipPath !== 'none') continue;
    if (!around.checkVisibility({ opacityProperty: true, visibilityProperty: true })) continue;
    range.selectNodeContents(node);
    const box = range.getBoundingClientRect();
    if (box.width <= 1 || box.height <= 1) continue;
    seen.push(node.data);
    // These come and go by themselves: what they say is no new view.
    if (!around.closest('.pill, .screen-undo, .screen-others')) text.push(node.data);
  }
  const step = document.querySelector('[data-step]');
  const heading = document.querySelector('dialog[open] h1, [data-step] h1, main h1, h1');
  const overlays = ['video', 'dialog[open]', '.stop', '.which', '.written-code', '.reader-heading'];
  return {
    step: step?.dataset.step ?? '',
    screen: document.querySelector('[data-step] .instruction') ? 'exchange' : step?.dataset.step ?? '',
    told: document.querySelector('[data-step] .instruction')?.innerText.trim() ?? '',
    heading: heading?.innerText.trim() ?? '',
    over: overlays.filter((each) => document.querySelector(each)),
    words: seen.join(' ').split(/\\s+/).filter((word) => /[\\p{L}\\p{N}]/u.test(word)).length,
    text: text.join(' '),
    quiet: performance.now() - window.changedAt,
    busy: document.querySelector('.main-button')?.innerText.trim().startsWith('One moment')
      || document.querySelector('.answer[disabled], .which-button[disabled]') !== null,
  };
}"""
_QUIET_MS = 180


class Count:
    """One phone's screens as one finger goes through them."""

    def __init__(self, phone: Phone):
        """Watch a phone from its next page on."""
        self.phone = phone
        self.page = phone.page
        self.screens: list[Seen] = []
        self._view: dict = {}
        self._taps = self._characters = self._most_words = 0
        self.page.add_init_script(_WATCH)

    def begin(self) -> None:
        """Count from the screen that is there now."""
        self._view = self._settled()
        self._most_words = self._view["words"]

    def end(self) -> None:
        """The last screen is left."""
        self._leave()

    @property
    def step(self) -> str:
        """The step on the screen; none where no job is shown."""
        return self._view["step"]

    @property
    def heading(self) -> str:
        """What stands over it."""
        return self._view["heading"]

    @property
    def told(self) -> str:
        """What it says to do now: a line under a heading that stays over several steps, or the heading."""
        return self._view["told"] or self._view["heading"]

    def has(self, over: str) -> bool:
        """Tell whether something opened over the step is shown: a camera, a stop."""
        return over in self._view["over"]

    def tap(self, where, *, leads_on: bool = False) -> None:
        """Touch a control; one that leads on is waited for until something else stands there."""
        where.wait_for(timeout=10_000)
        self._taps += 1
        self._act(where.tap, leads_on)

    def button(self, words: str, *, leads_on: bool = False) -> None:
        """Touch the button whose words begin so."""
        self.tap(self.find(words), leads_on=leads_on)

    def find(self, words: str):
        """Return the button whose words begin so."""
        return self.page.get_by_role("button", name=re.compile("^" + re.escape(words))).first

    def settle(self) -> None:
        """Wait until the screen stands still after what was done to it besides."""
        self._act(lambda: None, leads_on=False)

    def main(self) -> None:
        """Touch the one main button, which leads on."""
        self.tap(self.page.locator(".main-button"), leads_on=True)

    def type(self, field, text: str) -> None:
        """Touch a field and type; what stands there already is left."""
        if field.input_value() == text:
            return
        self._taps += 1
        self._characters += len(text)
        self._act(lambda: field.fill(text), leads_on=False)

    def show(self, label: str) -> None:
        """Hold a label before the open camera until it was taken; that touches nothing."""
        self._act(lambda: self._hold(label), leads_on=True)
        self.phone.lower()

    def _hold(self, label: str) -> None:
        """Hold it there; what was shown just before counts as shown again once it was away for a while."""
        before = _told(self._view)
        for _ in range(5):
            self.phone.hold(label)
            ends = time.monotonic() + 3
            while time.monotonic() < ends:
                if _told(self.page.evaluate(_VIEW)) != before:
                    return
                self.page.wait_for_timeout(40)
            self.phone.lower()
            self.page.wait_for_timeout(3000)

    def _act(self, do, leads_on: bool) -> None:
        before = self._view
        do()
        # What follows from it may begin a moment later.
        self.page.evaluate("() => { window.changedAt = performance.now(); }")
        now = self._settled(before if leads_on else None)
        if _is_new(_key(before), _key(now)):
            self._leave()
        self._view = now
        self._most_words = max(self._most_words, now["words"])

    def _leave(self) -> None:
        view = self._view
        self.screens.append(
            Seen(view["step"], view["heading"], self._taps, self._characters, self._most_words)
        )
        self._taps = self._characters = self._most_words = 0

    def _settled(self, other_than: dict | None = None) -> dict:
        """Return the view once nothing has changed for a moment, and it is not the one to be left."""
        ends = time.monotonic() + 30
        while True:
            view = self.page.evaluate(_VIEW)
            if view["quiet"] > _QUIET_MS and not view["busy"] and not _is_same(view, other_than):
                return view
            if time.monotonic() > ends:
                raise AssertionError(f"nothing else came:\n{self.phone.text()}")
            self.page.wait_for_timeout(40)


def _key(view: dict) -> tuple:
    return view["screen"], view["heading"], tuple(view["over"])


def _told(view: dict) -> tuple:
    """What a label leads on from: the step, what it says to do, and what stands over it."""
    return view["step"], view["heading"], view["told"], tuple(view["over"])


def _is_same(view: dict, before: dict | None) -> bool:
    return before is not None and _key(view) == _key(before) and view["text"] == before["text"]


def _is_new(before: tuple, now: tuple) -> bool:
    """A view is a screen of its own where its step or heading is another, or something opened over it."""
    return before[:2] != now[:2] or bool(set(now[2]) - set(before[2]))
