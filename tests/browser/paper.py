"""What comes out of the printer: the pages of a screen, to be measured and read by others than us."""

import numpy
import pypdfium2
import zxingcpp
from PIL import Image

POINTS_A_MM = 72 / 25.4
PIXELS_A_MM = 96 / 25.4  # of CSS
PRINTER_DPI = 203  # the coarser of the two usual thermal printers; common practice, no source

# Every piece of text that the sheet shows on paper, as the page has it; what is only read aloud is none. The
# codes along a trail have an outline, which makes them drawings in a PDF: they are looked at by their place.
TEXTS = """() => {
  const sheet = document.querySelector('.sheet');
  const found = [];
  const walker = document.createTreeWalker(sheet, NodeFilter.SHOW_TEXT);
  while (walker.nextNode()) {
    const { parentElement: owner, data } = walker.currentNode;
    if (!data.trim() || owner.closest('.aloud, .trail-code') || !owner.checkVisibility()) continue;
    found.push(data.trim());
  }
  return found;
}"""

# What sticks out of the sheet to the side: it would be cut off.
OUTSIDE = """() => {
  const sheet = document.querySelector('.sheet').getBoundingClientRect();
  const found = [];
  for (const each of document.querySelectorAll('.sheet *')) {
    const box = each.getBoundingClientRect();
    if (!box.width || each.closest('.aloud') || !each.checkVisibility()) continue;
    if (box.right > sheet.right + 1 || box.left < sheet.left - 1) {
      found.push(`${each.tagName} ${each.getAttribute('class')} ${each.textContent.trim().slice(0, 30)}`);
    }
  }
  return found;
}"""


class Paper:
    """A screen that was printed."""

    def __init__(self, page, *, room: float, size: tuple[int, int] | None = None):
        """Print on the paper that the style sheet asks for, else on `size`; `room`: mm across it."""
        options = {"prefer_css_page_size": True}
        if size:
            options["width"], options["height"] = (f"{side}mm" for side in size)
        before = page.viewport_size
        page.set_viewport_size({"width": int(room * PIXELS_A_MM), "height": before["height"]})
        page.emulate_media(media="print")
        self._wanted = page.evaluate(TEXTS)
        self.outside = page.evaluate(OUTSIDE)
        self._file = pypdfium2.PdfDocument(page.pdf(print_background=True, **options))
        page.emulate_media(media="null")
        page.set_viewport_size(before)

    def __len__(self) -> int:
        """Return how many pages it takes."""
        return len(self._file)

    def sizes(self) -> set[tuple[int, int]]:
        """Return the sizes of the pages in whole mm."""
        return {
            tuple(round(side / POINTS_A_MM) for side in self._file[n].get_size()) for n in range(len(self))
        }

    def lines(self) -> list[list[str]]:
        """Return the lines of text on each page, from the top down."""
        return [
            [line for line in self._file[n].get_textpage().get_text_range().splitlines() if line.strip()]
            for n in range(len(self))
        ]

    def white_below(self) -> float:
        """Return how many mm of the last page stay white below all that is on it."""
        rows = numpy.nonzero((numpy.asarray(self.pictures()[-1]) < 128).any(1))[0]
        return (len(numpy.asarray(self.pictures()[-1])) - 1 - rows.max()) * 25.4 / PRINTER_DPI

    def missing(self) -> list[str]:
        """Return the pieces of text on the sheet that are not whole on the paper."""
        texts = [self._file[n].get_textpage().get_text_range() for n in range(len(self))]
        printed = _bare(" ".join(texts))
        return [text for text in self._wanted if _bare(text) not in printed]

    def pictures(self, dpi: int = PRINTER_DPI) -> list[Image.Image]:
        """Return the pages as a printer of that fineness puts them down."""
        return [self._file[n].render(scale=dpi / 72).to_pil().convert("L") for n in range(len(self))]

    def codes(self, dpi: int = PRINTER_DPI) -> list[str]:
        """Return what a reader that is not ours finds on the paper."""
        return [found.text for picture in self.pictures(dpi) for found in zxingcpp.read_barcodes(picture)]

    def ink_at_the_edges(self, mm: float) -> int:
        """Return how many dark points lie in the margin that a printer may leave white."""
        dots = round(mm / 25.4 * PRINTER_DPI)
        count = 0
        for picture in self.pictures():
            dark = numpy.asarray(picture) < 128
            dark[dots:-dots, dots:-dots] = False
            count += int(dark.sum())
        return count


def _bare(text: str) -> str:
    """Return a text without what breaking it into lines changes."""
    return "".join(character for character in text if character.isalnum())
