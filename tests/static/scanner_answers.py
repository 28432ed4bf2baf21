"""Asks the app's own reader, in a browser, what it reads from pictures; zxing-cpp's answer beside it."""

import io
from collections.abc import Callable
from typing import NamedTuple

import zxingcpp
from PIL import Image
from playwright.sync_api import Page

from tests.static.degraded_labels import picture
from tests.static.drawn_labels import Picture

READ = """async ({ addresses, more }) => {
  const { readCodes } = await import('/app/scan-parts.js');
  const canvas = document.createElement('canvas');
  const context = canvas.getContext('2d', { willReadFrequently: true });
  const answers = [];
  for (const address of addresses) {
    const picture = await createImageBitmap(await (await fetch(address)).blob());
    canvas.width = picture.width;
    canvas.height = picture.height;
    context.drawImage(picture, 0, 0);
    picture.close();
    const began = performance.now();
    const found = await readCodes(canvas, { more });
    answers.push({ texts: found.map(({ text }) => text), ms: performance.now() - began });
  }
  return answers;
}"""


def read_by_the_app(page: Page, shown: list[Image.Image]) -> list[dict]:
    """Return what the app's reader finds in each picture, with every try it has: {"texts", "ms"}."""
    files = {}
    for number, each in enumerate(shown):
        file = io.BytesIO()
        each.save(file, "PNG", compress_level=1)
        files[f"/app/tried-{number}.png"] = file.getvalue()

    def serve(route):
        route.fulfill(
            body=files[route.request.url[route.request.url.index("/app/") :]], content_type="image/png"
        )

    page.route("**/app/tried-*", serve)
    answers = page.evaluate(READ, {"addresses": list(files), "more": "all"})
    page.unroute("**/app/tried-*")
    return answers


def read_by_zxing_cpp(shown: Image.Image) -> list[str]:
    """Return what zxing-cpp finds, with its own settings."""
    found = zxingcpp.read_barcodes(shown, formats=zxingcpp.BarcodeFormat.QRCode)
    return [each.text for each in found]


class Cell(NamedTuple):
    """What both read of a kind and step; any text but the label's is wrong, even one that a check catches."""

    pictures: int
    ours: int
    theirs: int
    ours_wrong: int
    theirs_wrong: int
    took_ms: list[float]
    missed: list[int]

    def percent(self, count: int) -> float:
        """Return a count as per cent of the pictures."""
        return 100 * count / self.pictures


def tried(
    page: Page, kind: str, step: int, count: int, draw: Callable[[str, int, int], Picture] = picture
) -> Cell:
    """Let both read the first `count` pictures of a kind at a step."""
    shown = [draw(kind, step, number) for number in range(count)]
    answers = read_by_the_app(page, [each.image for each in shown])
    ours = [answer["texts"] for answer in answers]
    theirs = [read_by_zxing_cpp(each.image) for each in shown]
    right = [each.text for each in shown]
    return Cell(
        count,
        sum(text in texts for text, texts in zip(right, ours, strict=True)),
        sum(text in texts for text, texts in zip(right, theirs, strict=True)),
        sum(other != text for text, texts in zip(right, ours, strict=True) for other in texts),
        sum(other != text for text, texts in zip(right, theirs, strict=True) for other in texts),
        [answer["ms"] for answer in answers],
        [number for number in range(count) if right[number] not in ours[number]],
    )
