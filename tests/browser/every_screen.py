"""An address for every screen of the app, and what is looked at on each: axe, room, cut text, motion."""

import re
from pathlib import Path

import axe_playwright_python
from playwright.sync_api import Page

from tests.browser_support import ROOT

AXE = (Path(axe_playwright_python.__file__).parent / "axe.min.js").read_text("utf-8")
DATED = "2026-01-31"
# What a phone at the parts counter, and an app without a server, show in a way of their own.
AT_COUNTER = ("", "returns", f"returns/{DATED}", "search", "new", "you", "find")
ALONE = (
    "", "you", "file", "take-in", "outbox", "pair", "install", "labels", "labels/print", "record", "search",
    "returns", "phones", "lessons",
)  # fmt: skip

# WCAG 2.2 to AA and axe's best practices, with the contrast that looks like ours keep: 7:1.
RULES = {
    "runOnly": {"type": "tag", "values": [
        "wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22a", "wcag22aa", "best-practice",
    ]},
    "rules": {"color-contrast-enhanced": {"enabled": True}, "target-size": {"enabled": True}},
    "resultTypes": ["violations"],
}  # fmt: skip
CONTRAST = {
    "runOnly": {"type": "rule", "values": ["color-contrast-enhanced"]},
    "resultTypes": ["violations"],
}
RUN = """(options) => axe.run(document, options).then(({ violations }) => violations.flatMap(
  ({ id, nodes }) => nodes.map(({ html, target, any }) =>
    `${id}: ${target} ${html.slice(0, 120)} ${any.map(({ message }) => message).join('; ')}`)))"""

# What is wider than its place, and words that are cut off at an edge.
_NO_ROOM = """() => {
  const found = [];
  const { clientWidth } = document.documentElement;
  for (const box of [document.documentElement, ...document.querySelectorAll('main, .screen, .screen-foot')]) {
    if (box.scrollWidth > box.clientWidth + 1) {
      found.push(`${box.tagName} scrolls sideways: ${box.scrollWidth} > ${box.clientWidth}`);
    }
  }
  const words = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  const range = document.createRange();
  while (words.nextNode()) {
    const node = words.currentNode;
    const element = node.parentElement;
    if (!node.data.trim() || element.closest('.aloud, .stage-word, option, script, noscript')) continue;
    range.selectNodeContents(node);
    const boxes = [...range.getClientRects()].filter(({ width, height }) => width > 1 && height > 1);
    if (!boxes.length) continue;
    const left = Math.min(...boxes.map((box) => box.left));
    const right = Math.max(...boxes.map((box) => box.right));
    const said = node.data.trim().slice(0, 40);
    if (left < -1 || right > clientWidth + 1) {
      // Blanks at the end of a line that is kept as typed hang over the edge, and nobody sees them.
      const hangs = getComputedStyle(element).whiteSpace === 'pre-wrap' && right <= clientWidth + 40;
      if (!hangs && !sideways(element)) found.push(`"${said}" goes off the screen`);
    }
    for (let around = element; around && around !== document.body; around = around.parentElement) {
      const { overflowX, overflowY, webkitLineClamp, position } = getComputedStyle(around);
      const clips = (way) => way === 'hidden' || way === 'clip';
      if (overflowX === 'auto' || overflowX === 'scroll') break;
      const edge = around.getBoundingClientRect();
      if (clips(overflowX) && (left < edge.left - 1 || right > edge.right + 1)) {
        found.push(`"${said}" is cut at the side`);
      }
      // The box of a drawn word reaches below its line by what no capital or digit fills.
      const below = element.closest('svg') ? boxes[0].height / 3 : 3;
      const bottom = Math.max(...boxes.map((box) => box.bottom));
      // A clamp says by its dots that there is more, on the screen behind it.
      if (clips(overflowY) && webkitLineClamp === 'none' && bottom > edge.bottom + below) {
        found.push(`"${said}" is cut below`);
      }
      if (position === 'fixed') break;
    }
  }
  return found;

  function sideways(element) {
    for (let around = element; around; around = around.parentElement) {
      const { overflowX } = getComputedStyle(around);
      if (around.matches('main, html')) continue;
      if (overflowX === 'auto' || overflowX === 'scroll') return around;
    }
    return null;
  }
}"""

# What is broken over two lines of what looks so: [it, the text it stands in], outside of some elements.
_BROKEN = """([looks, outside]) => {
  const found = [];
  const words = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  const range = document.createRange();
  while (words.nextNode()) {
    const node = words.currentNode;
    if (node.parentElement.closest(outside)) continue;
    for (const { 0: one, index } of node.data.matchAll(new RegExp(looks, 'gu'))) {
      range.setStart(node, index);
      range.setEnd(node, index + one.length);
      const tops = [...range.getClientRects()].filter(({ width }) => width).map(({ top }) => Math.round(top));
      if (new Set(tops).size > 1) found.push([one, node.data.trim().slice(0, 40)]);
    }
  }
  return found;
}"""
# A label code that is broken over two lines is read as two.
_CODES = [r"\b[2-9A-Y]{3}-[2-9A-Y]{2}\b", ".aloud, option, script, noscript"]
# Nor is a word broken that has no hyphen; paper is wider than the phone that shows it.
_WORDS = [r"\p{L}{3,}", ".aloud, .sheet, option, script, noscript, code, pre"]

_FOOT_OUT_OF_SIGHT = """() => [...document.querySelectorAll('.screen-foot button')]
  .filter((button) => {
    const { top, bottom } = button.getBoundingClientRect();
    return top < 0 || bottom > innerHeight + 1;
  }).map((button) => `"${button.textContent.trim()}" is out of sight`)"""

_MOVES = """() => document.getAnimations().filter(({ playState }) => playState === 'running')
  .map(({ effect }) => `${effect.target.className} moves`)"""


# Words of English that are none of Spanish, and whoever writes English cannot do without.
_ENGLISH = re.compile(
    r"\b(the|and|of|with|this|that|is|are|was|were|it|its|you|your|from|for|on|to|at|not|be|by|which|have|"
    r"what|when|who|where|there|here|then|one|each|every|all|no longer|sensor's|photo|label|test)\b",
    re.IGNORECASE,
)
_SHOWN = """() => {
  const found = [];
  const words = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  while (words.nextNode()) {
    const { data, parentElement } = words.currentNode;
    if (!parentElement.closest('script, noscript, code, pre, [lang]:not(html)')) found.push(data.trim());
  }
  for (const element of document.querySelectorAll('[aria-label], [title], [placeholder], img[alt]')) {
    for (const name of ['aria-label', 'title', 'placeholder', 'alt']) {
      if (element.getAttribute(name)) found.push(element.getAttribute(name));
    }
  }
  return found.filter(Boolean);
}"""


def english(shown: list[str], typed: tuple[str, ...]) -> list[str]:
    """Return what is written in English, but for what a person `typed`."""
    found = []
    for text in shown:
        left = text
        for said in typed:
            left = left.replace(said, "")
        if _ENGLISH.search(left) and not left.isupper():  # a code may spell a word
            found.append(text)
    return found


def addresses(jobs: dict[str, str], *, unit: str, code: str, batch: int, photo: str) -> list[str]:
    """Return what stands behind `#` for every screen, with jobs by their kind of step."""
    job = jobs["done"]
    return [
        "", "new", "you", "outbox", "install", "pair", "find", "record", "search", "phones",
        "lessons", "lessons/year",
        *(f"job/{each}" for each in jobs.values()),
        *(f"job/{jobs['moves']}/{part}" for part in ("moves", "trail", "history", "assumptions")),
        f"job/{jobs['moves']}/correct/test:1", f"job/{jobs['moves']}/correct/position:rear-right-outer",
        f"job/{jobs['moves']}/install", f"job/{jobs['moves']}/shared", "shared", "shared/full",
        f"job/{job}/photos",
        f"job/{jobs['cautions']}/photos",
        f"job/{job}/photo/{photo}",
        f"job/{jobs['twelve']}/trail",
        f"job/{jobs['new_unit']}/hand",
        f"job/{jobs['moves']}/ways", f"job/{jobs['moves']}/ways/pause", f"job/{jobs['moves']}/listen",
        f"job/{jobs['moves']}/position/rear-right-outer",
        f"job/{job}/file", f"job/{job}/report",
        f"vehicle/{unit.partition('.')[0]}",
        f"unit/{unit}/entries",
        f"unit/{unit}", f"unit/{unit}/file", f"unit/{unit}/slip", f"unit/{unit}/paper",
        f"return/{unit}", "returns", f"returns/{DATED}",
        "labels", "labels/print", f"labels/{batch}", f"labels/{batch}/sheet",
        "file", "take-in",
        "help", f"job/{job}/help/verdict",
        *(f"help/{page.stem}" for page in sorted((ROOT / "static" / "help" / "en").glob("*.md"))),
        code, f"code/{code}", f"code/{code}/scanned", "code/22222/typed",
        "job/j0000000000ff", "no/such/screen",
    ]  # fmt: skip


def without_example(page: Page, shown: list[str]) -> list[str]:
    """Return the routes of the app's own table that none of these addresses belongs to."""
    table = page.evaluate(
        """async () => {
          const { SCREENS } = await import('/app/parts.js');
          return SCREENS.map(([pattern, name]) => [pattern.source, name]);
        }"""
    )
    lacking = []
    for source, name in table:
        pattern = source.replace("\\/", "/")
        parts = [] if name else re.findall(r"\((\w+(?:\|\w+)+)\)", pattern)[-1].split("|")
        taken = [address for address in shown if re.search(pattern, address)]
        lacking += [f"{pattern} {part}" for part in parts if not any(a.endswith(f"/{part}") for a in taken)]
        if not taken:
            lacking.append(pattern)
    return lacking


class Eye:
    """Looks at the screens of one page, one after the other."""

    def __init__(self, page: Page, base: str) -> None:
        """Look at this page of the app at `base`."""
        self.page = page
        self.base = base
        self.wrong: list[str] = []

    def go(self, address: str) -> None:
        """Show a screen by its address behind `#`, and wait until it stands."""
        if self.page.evaluate("() => location.hash || '#/'") == f"#/{address}":
            return
        self.page.evaluate("() => { globalThis.before = document.querySelector('main'); }")
        self.page.evaluate("(hash) => { location.hash = hash; }", f"#/{address}")
        self.page.wait_for_function(
            "() => document.querySelector('main') && document.querySelector('main') !== globalThis.before"
        )

    def open(self, path: str) -> None:
        """Load a path that comes from outside."""
        self.page.goto(self.base + path)
        self.page.locator(".screen").wait_for()

    def look(self, name: str) -> None:
        """Look at what is shown: with axe in both themes, then small, lying down and with large text."""
        found = set()
        self._show(390, 844)
        self.page.evaluate(
            "() => document.querySelectorAll('details').forEach((each) => { each.open = true; })"
        )
        if not self.page.evaluate("() => 'axe' in globalThis"):
            self.page.evaluate(AXE)
        found.update(self.page.evaluate(RUN, RULES))
        self.page.emulate_media(color_scheme="dark")
        found.update(f"dark {each}" for each in self.page.evaluate(RUN, CONTRAST))
        self.page.emulate_media(color_scheme="light")
        found.update(self.page.evaluate(_MOVES))
        for width, height, percent in ((320, 640, 100), (320, 640, 200), (844, 390, 100), (568, 320, 100)):
            self._show(width, height, percent)
            said = self.page.evaluate(_NO_ROOM) + self.page.evaluate(_FOOT_OUT_OF_SIGHT)
            said += [f'"{text}" breaks a code' for _, text in self.page.evaluate(_BROKEN, _CODES)]
            found.update(f"{width}x{height} {percent} %: {each}" for each in said)
        self.wrong += [f"{name or 'jobs'}: {each}" for each in sorted(found)]

    def read(self, name: str, typed: tuple[str, ...]) -> None:
        """Look at what is shown in another language: it has room, and nothing of it is English."""
        self.page.evaluate(
            "() => document.querySelectorAll('details').forEach((each) => { each.open = true; })"
        )
        found = {f"English: {each}" for each in english(self.page.evaluate(_SHOWN), typed)}
        for width, height, percent in ((320, 640, 100), (320, 640, 200)):
            self._show(width, height, percent)
            said = self.page.evaluate(_NO_ROOM) + self.page.evaluate(_FOOT_OUT_OF_SIGHT)
            found.update(f"{width}x{height} {percent} %: {each}" for each in said)
        self._show(390, 844)
        broken = self.page.evaluate(_BROKEN, _WORDS)
        found.update(f'"{word}" is broken in "{text}"' for word, text in broken)
        self.wrong += [f"{name or 'jobs'}: {each}" for each in sorted(found)]

    def _show(self, width: int, height: int, percent: int = 100) -> None:
        self.page.set_viewport_size({"width": width, "height": height})
        # As a person sets it on the phone; 112.5 % are the app's own 18 px.
        self.page.evaluate(
            "(size) => { document.documentElement.style.fontSize = size; }", f"{1.125 * percent}%"
        )
