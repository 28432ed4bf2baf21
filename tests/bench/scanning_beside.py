"""How often our scanner reads a second set of degraded labels, beside three others on the same pictures.

    python -m tests.bench.scanning_beside [--pictures 10] [--kind glare]

Figures for people, never asserted here. The set is `tests.static.yard_labels`, ten pictures a kind and
severity. Beside ours stand zxing-cpp and, where they are installed, OpenCV and zbar (modules `cv2` and
`pyzbar`; neither is a dependency of the project). A cell is ours/any of the others, then the numbers of the
pictures that ours missed, with a star where another read it. Ours is given every try it has, as in
`tests.bench.scanning`.
"""

import argparse
import importlib
import time
from collections.abc import Callable
from types import ModuleType

import numpy
from PIL import Image

from tests.bench.scanning import bare_page
from tests.static.scanner_answers import read_by_the_app
from tests.static.scanner_answers import read_by_zxing_cpp
from tests.static.yard_labels import KINDS
from tests.static.yard_labels import SEVERITIES
from tests.static.yard_labels import picture

AT_ONCE = 10  # pictures handed to the browser
Reader = Callable[[Image.Image], list[str]]


def main() -> None:
    """Print the table, a row a kind, as it comes in, and what each read of the whole."""
    parser = argparse.ArgumentParser(
        description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter
    )
    parser.add_argument("--pictures", type=int, default=10, help="pictures a kind and severity")
    parser.add_argument("--kind", choices=sorted(KINDS), action="append", help="only this kind")
    asked = parser.parse_args()
    others = {"zxing-cpp": read_by_zxing_cpp, **_opencv(), **_zbar()}
    print(f"beside {', '.join(others)}; {asked.pictures} pictures a cell: ours/any of them")
    whole = dict.fromkeys(["pictures", "ours", "ours wrong", "any", *others], 0)
    with bare_page() as page:
        for kind in asked.kind or KINDS:
            cells = []
            took: list[float] = []
            for severity in range(1, SEVERITIES + 1):
                shown = [picture(kind, severity, number) for number in range(asked.pictures)]
                ours = read_by_the_app(page, [each.image for each in shown])
                took += [answer["ms"] for answer in ours]
                read = dict.fromkeys(whole, 0)
                missed = []
                for number, (each, answer) in enumerate(zip(shown, ours, strict=True)):
                    theirs = {name: each.text in reader(each.image) for name, reader in others.items()}
                    read["ours"] += each.text in answer["texts"]
                    read["ours wrong"] += any(text != each.text for text in answer["texts"])
                    read["any"] += any(theirs.values())
                    for name, hit in theirs.items():
                        read[name] += hit
                    if each.text not in answer["texts"]:
                        missed.append(f"{number}*" if any(theirs.values()) else str(number))
                read["pictures"] = len(shown)
                for name in whole:
                    whole[name] += read[name]
                cells.append(f"{read['ours']:>4}/{read['any']:<3}{' '.join(missed):<24}")
            took.sort()
            print(
                f"{kind:9}{''.join(cells)} {took[len(took) // 2]:.0f} ms, at most {took[-1]:.0f}", flush=True
            )
    print(", ".join(f"{name} {count}" for name, count in whole.items()))


def _module(name: str) -> ModuleType | None:
    try:
        return importlib.import_module(name)
    except ImportError:
        return None


def _opencv() -> dict[str, Reader]:
    cv2 = _module("cv2")
    if cv2 is None:
        return {}
    detector = cv2.QRCodeDetector()

    def read(shown: Image.Image) -> list[str]:
        try:
            return [text for text in detector.detectAndDecodeMulti(numpy.asarray(shown))[1] if text]
        except (cv2.error, UnicodeDecodeError):
            return []

    return {"OpenCV": read}


def _zbar() -> dict[str, Reader]:
    pyzbar = _module("pyzbar.pyzbar")
    if pyzbar is None:
        return {}

    def read(shown: Image.Image) -> list[str]:
        found = pyzbar.decode(shown, symbols=[pyzbar.ZBarSymbol.QRCODE])
        return [each.data.decode("utf-8", "replace") for each in found]

    return {"zbar": read}


if __name__ == "__main__":
    began = time.monotonic()
    main()
    print(f"{time.monotonic() - began:.0f} s")
