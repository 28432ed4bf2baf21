"""How often our scanner reads a degraded label, beside zxing-cpp on the same pictures.

    python -m tests.bench.scanning [--pictures 50] [--kind blur]

Figures for people, never asserted here; tests/static/test_scanner_degraded.py asserts on a smaller set. Ours
is the reader that the app runs, in Chromium, given every try it has, as a camera held still gives it within a
second; zxing-cpp is its Python package with its own settings. A cell is per cent read, ours/zxing-cpp.
"""

import argparse
import tempfile
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from playwright.sync_api import Page

from tests.browser_support import launch
from tests.static.app_server import AppServer
from tests.static.degraded_labels import KINDS
from tests.static.degraded_labels import STEPS
from tests.static.phone_parts import open_bare
from tests.static.scanner_answers import Cell
from tests.static.scanner_answers import tried


def main() -> None:
    """Print the table, a row a kind, as it comes in."""
    parser = argparse.ArgumentParser(
        description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter
    )
    parser.add_argument("--pictures", type=int, default=50, help="pictures a kind and step")
    parser.add_argument("--kind", choices=sorted(KINDS), action="append", help="only this kind")
    asked = parser.parse_args()
    print(f"{asked.pictures} pictures a cell; steps 1 to 3 are the mild half")
    print(
        f"{'':12}" + "".join(f"{step:>10}" for step in range(1, STEPS + 1)) + "   wrong   ms, median and most"
    )
    with bare_page() as page:
        for kind in asked.kind or KINDS:
            print(
                row(kind, [tried(page, kind, step, asked.pictures) for step in range(1, STEPS + 1)]),
                flush=True,
            )


def row(kind: str, cells: list[Cell]) -> str:
    """Return the line of one kind."""
    rates = "".join(f"{cell.percent(cell.ours):>6.0f}/{cell.percent(cell.theirs):<3.0f}" for cell in cells)
    wrong = f"{sum(cell.ours_wrong for cell in cells)}/{sum(cell.theirs_wrong for cell in cells)}"
    took = sorted(ms for cell in cells for ms in cell.took_ms)
    return f"{kind:12}{rates}   {wrong:>5}   {took[len(took) // 2]:.0f} {took[-1]:.0f}"


@contextmanager
def bare_page() -> Iterator[Page]:
    """Give a page of the app in which nothing was started."""
    with tempfile.TemporaryDirectory() as data:
        server = AppServer(Path(data))
        browser = launch()
        try:
            yield open_bare(browser.new_context(service_workers="block"), server.base)
        finally:
            browser.close()
            server.close()


if __name__ == "__main__":
    began = time.monotonic()
    main()
    print(f"{time.monotonic() - began:.0f} s")
