"""Serves the gallery of looks to a real browser, under the policy that the real server sends.

The looks are tested without core and server: the gallery makes up its own scenes.
"""

import base64
import functools
import hashlib
import http.server
import re
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from playwright.sync_api import Page

from server.web.security import content_security_policy
from server.words.files import sent_source_of
from tests.browser_support import launch

ROOT = Path(__file__).parents[2]
_PAGE = (ROOT / "tests" / "static" / "gallery.html").read_text(encoding="utf-8")
_IMPORT_MAP = re.search(r'<script type="importmap">(.*?)</script>', _PAGE, re.S)


def _policy() -> str:
    assert _IMPORT_MAP
    digest = base64.b64encode(hashlib.sha256(_IMPORT_MAP[1].encode()).digest()).decode()
    return content_security_policy([f"'sha256-{digest}'"])


class _Files(http.server.SimpleHTTPRequestHandler):
    def do_GET(self) -> None:
        if self.path != "/static/words/en.ftl":
            super().do_GET()
            return
        words = sent_source_of("en")
        self.send_response(200)
        self.send_header("Content-Length", str(len(words)))
        self.end_headers()
        self.wfile.write(words)

    def end_headers(self) -> None:
        self.send_header("Content-Security-Policy", _policy())
        super().end_headers()

    def log_message(self, format: str, *args: object) -> None:
        """Keeps the test output quiet."""


class Gallery:
    """One browser page that can show any scene; complaints of the page are kept."""

    def __init__(self, page: Page, address: str) -> None:
        self.page = page
        self.complaints: list[str] = []
        self._address = address
        page.on("pageerror", lambda error: self.complaints.append(str(error)))
        page.on("console", lambda message: self._heard(message.type, message.text))

    def _heard(self, kind: str, text: str) -> None:
        # The browser asks for an icon that the gallery does not have.
        if kind in {"error", "warning"} and "404" not in text:
            self.complaints.append(text)

    def show(self, query: str, *, width: int = 390, height: int = 844) -> Page:
        """Opens a scene, waits until it is drawn, and fails on anything the browser objects to."""
        self.page.set_viewport_size({"width": width, "height": height})
        if self.page.url == "about:blank":
            self.page.goto(self._address)
            self.page.wait_for_selector("body[data-ready]")
        self.page.evaluate("(query) => window.show(query)", query)
        assert self.complaints == []
        return self.page


@contextmanager
def open_gallery() -> Iterator[Gallery]:
    """Starts the little file server and the browser, and ends both."""
    handler = functools.partial(_Files, directory=str(ROOT))
    with http.server.ThreadingHTTPServer(("127.0.0.1", 0), handler) as server:
        thread = threading.Thread(target=server.serve_forever)
        thread.start()
        try:
            browser = launch()
            address = f"http://127.0.0.1:{server.server_port}/tests/static/gallery.html"
            yield Gallery(browser.new_page(), address)
            browser.close()
        finally:
            server.shutdown()
            thread.join()


# Every piece of text that can be seen, line by line, and every mark in a picture, with its box.
# Text of one element wraps and is one thing; what is only read aloud has no place on the screen.
BOXES = """
(root) => {
  const boxes = [];
  const add = (what, owner, rect) => {
    if (rect.width > 0 && rect.height > 0) {
      boxes.push({what, owner, left: rect.left, right: rect.right, top: rect.top,
        bottom: rect.bottom});
    }
  };
  const top = document.querySelector(root);
  const walker = document.createTreeWalker(top, NodeFilter.SHOW_TEXT);
  const owners = [];
  while (walker.nextNode()) {
    const node = walker.currentNode;
    const element = node.parentElement;
    const hidden = element.closest('.aloud') || getComputedStyle(element).clipPath !== 'none';
    if (!node.data.trim() || hidden) continue;
    const whole = element.closest('.code') ?? element;
    let owner = owners.indexOf(whole);
    if (owner < 0) owner = owners.push(whole) - 1;
    const range = document.createRange();
    range.selectNodeContents(node);
    for (const rect of range.getClientRects()) add(node.data.trim(), owner, rect);
  }
  for (const picture of top.querySelectorAll('.board-drawing, .trail-picture')) {
    for (const mark of picture.querySelectorAll('.mark-shape, .trail-hand')) {
      add('mark', owners.push(mark) - 1, mark.getBoundingClientRect());
    }
  }
  return boxes;
}
"""


def collisions(boxes: list[dict]) -> list[str]:
    """Returns the pairs of boxes that lie over each other by more than a pixel."""
    found = []
    ordered = sorted(boxes, key=lambda box: box["top"])
    for n, one in enumerate(ordered):
        for other in ordered[n + 1 :]:
            if other["top"] >= one["bottom"] - 1:
                break
            if one["owner"] == other["owner"]:
                continue
            across = min(one["right"], other["right"]) - max(one["left"], other["left"])
            along = min(one["bottom"], other["bottom"]) - other["top"]
            if across > 1 and along > 1:
                found.append(f"{one['what']} over {other['what']} by {across:.1f} x {along:.1f}")
    return found
