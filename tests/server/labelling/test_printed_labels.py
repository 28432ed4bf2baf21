"""What comes out of the printer, read back by a decoder that is not ours and measured dot by dot.

PDF is drawn by PDFium, SVG by resvg, both read by zxing-cpp. A pass of the decoder proves no margin (it
reads with one module of it), so margin and modules are measured on the dots as well.
"""

import re
import subprocess

import numpy
import pypdfium2
import pytest
import zxingcpp
from PIL import Image
from PIL import ImageDraw
from PIL import ImageFilter

from server.core.codes import labels
from server.core.printing.advice import warnings
from server.core.printing.layout import PAPERS
from server.core.printing.layout import layout_of
from server.core.printing.scan_distance import LEAST_DOTS
from tests.browser_support import find_browser
from tests.long_runs import LONG
from tests.said import english
from tests.server.labelling.printed import Printed
from tests.server.labelling.printed import modules_of
from tests.server.labelling.printed import some_codes
from tests.server.phone import BASE

ROLLS = {"203": {"roll": "30x20", "dpi": "203"}, "300": {"roll": "25x32", "dpi": "300"}}
SHEETS = {
    "a4": {"dpi": "300"},
    "a4 at 203": {"dpi": "203"},
    "letter": {"paper": "letter", "dpi": "300"},
    "precut": {"grid": "5x13", "label": "38.1x21.2", "gap": "2.5x0", "precut": "yes"},
    "few and large": {"grid": "2x4"},
}


@pytest.fixture(autouse=True)
def each_symbol_once(monkeypatch):
    """Make each symbol once: a text has the same modules on every label and in every expectation."""
    monkeypatch.setattr("server.labelling.sheet.matrix", modules_of)


@pytest.fixture(scope="module")
def thousand():
    codes = some_codes(1000)
    assert len(set(codes)) == 1000
    return codes


def from_its_edges(label):
    """Return how many dots of a label's picture lie between its print and the nearest edge."""
    rows, columns = numpy.nonzero(label < 128)
    height, width = label.shape
    return min(rows.min(), columns.min(), height - 1 - rows.max(), width - 1 - columns.max())


@pytest.mark.parametrize(
    ("way", "form", "dpi"), [(0, "pdf", "203"), (1, "pdf", "300"), (2, "svg", "203"), (3, "svg", "300")]
)
def test_all_of_a_thousand_labels_read_back_dot_by_dot(thousand, way, form, dpi):
    """Each way prints a quarter of them; SWAPTRAIL_LONG=1 prints all of them in each way."""
    codes = thousand if LONG else thousand[way::4]
    printed = Printed(codes, form, **ROLLS[dpi])
    dots, read = printed.face.choice.dots, 0
    assert dots >= LEAST_DOTS
    for code, label in printed.labels():
        symbol = zxingcpp.read_barcode(label)
        assert symbol is not None, code
        assert symbol.text == f"HTTP://LOCALHOST:8765/U/{code}"
        # Each module so many whole dots, all round it a margin of four modules without a speck.
        assert numpy.array_equal(printed.symbol_with_margin(label), printed.wanted_dots(code)), code
        read += 1
    assert read == (1000 if LONG else 250)


@pytest.mark.parametrize("form", ["pdf", "svg"])
@pytest.mark.parametrize("sheet", SHEETS)
def test_every_label_of_a_sheet_reads_back_dot_by_dot(form, sheet):
    count = 70 if LONG else min(70, layout_of(SHEETS[sheet]).labels + 6)  # a page, and the next begun
    printed = Printed(some_codes(count), form, **SHEETS[sheet])
    found = dict.fromkeys(printed.codes, False)
    for code, label in printed.labels():
        symbol = zxingcpp.read_barcode(label)
        assert symbol is not None
        found[code] = symbol.text.endswith(code)
        assert numpy.array_equal(printed.symbol_with_margin(label), printed.wanted_dots(code)), code
    assert all(found.values())
    assert len(printed.files) == (1 if form == "pdf" else -(-count // printed.layout.labels))


@pytest.mark.parametrize("base", [BASE, "https://swaptrail.workshop.lan:48765"])
@pytest.mark.parametrize("options", [*ROLLS.values(), *SHEETS.values()])
def test_the_margin_is_free_of_code_and_cut_marks_for_any_address(base, options):
    printed = Printed(some_codes(1), "pdf", base=base, **options)
    ((code, label),) = printed.labels()
    symbol = printed.symbol_with_margin(label)
    assert symbol.shape == (printed.face.choice.across,) * 2
    assert numpy.array_equal(symbol, printed.wanted_dots(code))


@pytest.mark.parametrize("form", ["pdf", "svg"])
def test_the_code_is_in_letters_beside_the_symbol(form):
    """Something is drawn there; PDFium reads the very characters out of the PDF."""
    for options in (*ROLLS.values(), *SHEETS.values()):
        printed = Printed(some_codes(3), form, **options)
        for _, label in printed.labels():
            outside = label.copy()
            printed.symbol_with_margin(outside)[:] = 255
            assert (outside < 128).sum() > 100
    if form == "pdf":
        with pypdfium2.PdfDocument(printed.files[0]) as document:
            written = document[0].get_textpage().get_text_range()
        assert all(labels.shown(code) in written for code in printed.codes)
    else:
        assert all(labels.shown(code) in printed.files[0].decode() for code in printed.codes)


@pytest.mark.parametrize("options", [*ROLLS.values(), *SHEETS.values()])
def test_a_page_has_its_size_on_paper(options):
    """ISO 216 and ANSI/ASME Y14.1 for the sheets; whole dots are at most half a dot off."""
    wanted = [side / 100 for side in PAPERS[options.get("paper", "a4")]]
    if "roll" in options:
        wanted = [float(side) for side in options["roll"].split("x")]
    printed = Printed(some_codes(1), "pdf", **options)
    half = 25.4 / printed.layout.dpi / 2
    with pypdfium2.PdfDocument(printed.files[0]) as document:
        size = [side / 72 * 25.4 for side in document[0].get_size()]
    assert size == pytest.approx(wanted, abs=half + 0.001)
    drawing = Printed(some_codes(1), "svg", **options).files[0].decode()
    size = [float(side) for side in re.search(r'width="([\d.]+)mm" height="([\d.]+)mm"', drawing).groups()]
    assert size == pytest.approx(wanted, abs=half + 0.001)


@pytest.mark.parametrize("sheet", ["a4", "letter", "a4 at 203"])
def test_the_ruler_is_as_long_as_it_says_and_nothing_lies_in_the_printers_margin(sheet):
    printed = Printed(some_codes(56), "pdf", **SHEETS[sheet])
    picture = next(printed.pictures)
    dot = 25.4 / printed.layout.dpi
    rows, columns = numpy.nonzero(picture < 128)
    margin = 5 / dot  # what common printers leave blank; common practice, no source
    assert columns.min() >= margin
    assert rows.min() >= margin
    assert columns.max() <= picture.shape[1] - margin
    assert rows.max() <= picture.shape[0] - margin
    ruler = picture[rows.max()] < 128
    assert ruler.sum() * dot == pytest.approx(100, abs=dot)


@pytest.mark.parametrize("form", ["pdf", "svg"])
@pytest.mark.parametrize(
    "options",
    [
        {"grid": "5x13", "label": "38.1x21.2", "margin": "4.7x10.7", "gap": "2.5x0"},
        {"grid": "3x8"},  # to the very edge of the paper
        {"grid": "4x12", "dpi": "203"},
        {"paper": "letter", "grid": "4x15", "label": "44.5x16.9", "margin": "7.5x12.7", "gap": "7.5x0"},
    ],
)
def test_print_on_a_precut_sheet_keeps_a_millimetre_and_a_half_from_every_edge(form, options):
    """Of each label, and so of the sheet."""
    printed = Printed(some_codes(4), form, precut="yes", **options)
    edge = round(1.5 / 25.4 * printed.layout.dpi)
    for _, label in printed.labels():
        assert from_its_edges(label) >= edge
    found = english(warnings(printed.layout, printed.face, 20))
    assert not any("edge" in warning for warning in found)


@pytest.mark.parametrize("roll", ["30x20", "25x25", "50x30", "25x15", "19x51"])
@pytest.mark.parametrize("dpi", ["203", "300"])
def test_print_on_a_roll_keeps_a_millimetre_from_every_edge_and_four_modules_around_the_symbol(roll, dpi):
    """A printer of rolls stands up to a millimetre beside where it should; letters were 0.4 from the edge."""
    printed = Printed(some_codes(2), "pdf", roll=roll, dpi=dpi)
    edge = round(1 / 25.4 * printed.layout.dpi)
    for _, label in printed.labels():
        assert from_its_edges(label) >= edge
        corners = zxingcpp.read_barcode(Image.fromarray(label)).position
        quiet = 4 * printed.face.choice.dots  # ISO/IEC 18004; a dot is what the reader is out by
        assert min(corners.top_left.x, corners.top_left.y) >= quiet - 1
    assert not any("edge" in warning for warning in english(warnings(printed.layout, printed.face, 5)))


@pytest.mark.parametrize("form", ["pdf", "svg"])
@pytest.mark.parametrize(
    "options", [{}, {"paper": "letter", "grid": "4x6"}, {"label": "20x24", "dpi": "203"}]
)
def test_print_on_a_sheet_that_is_cut_by_hand_keeps_a_millimetre_from_every_mark(form, options):
    """Scissors beside a mark took off the first letter of a code, and the last, its check character."""
    printed = Printed(some_codes(4), form, **options)
    edge = round(1 / 25.4 * printed.layout.dpi)
    marks = 3  # dots: the cut marks lie on the edge itself
    for _, label in printed.labels():
        assert marks + from_its_edges(label[marks:-marks, marks:-marks]) >= edge


def test_a_label_reads_when_blurred_turned_scaled_and_dirty():
    ((code, dots),) = Printed(some_codes(1), "pdf").labels()
    label = Image.fromarray(dots)
    dirty = label.copy()
    ImageDraw.Draw(dirty).rectangle([150, 110, 190, 160], fill=0)
    cases = {
        "turned": label.rotate(27, expand=True, fillcolor=255, resample=Image.Resampling.BICUBIC),
        "blurred": label.filter(ImageFilter.GaussianBlur(2.5)),
        "small": label.resize((label.width // 3, label.height // 3)),
        "dirty": dirty,
    }
    for name, image in cases.items():
        symbol = zxingcpp.read_barcode(image)
        assert symbol is not None, name
        assert symbol.text.endswith(code)


def test_the_same_labels_make_the_same_file():
    codes = some_codes(3)
    assert Printed(codes, "pdf").files == Printed(codes, "pdf").files


@pytest.mark.browser
def test_a_browser_shows_the_svg_so_that_it_reads(tmp_path):
    """As a person's browser would print it; resvg and PDFium are not what most people have."""
    printed = Printed(some_codes(56), "svg")
    file, picture = tmp_path / "sheet.svg", tmp_path / "sheet.png"
    file.write_bytes(printed.files[0])
    # Headless and with a profile of its own.
    command = [find_browser(), "--headless", "--no-sandbox", f"--user-data-dir={tmp_path}/profile"]
    command += [f"--screenshot={picture}", "--window-size=794,1123", "--force-device-scale-factor=2"]
    subprocess.run([*command, file.as_uri()], check=True, capture_output=True, timeout=60)
    assert {each.text[-5:] for each in zxingcpp.read_barcodes(Image.open(picture))} == set(printed.codes)


@pytest.mark.parametrize("form", ["pdf", "svg"])
@pytest.mark.parametrize("options", [*ROLLS.values(), {"roll": "50x30"}, *SHEETS.values()])
def test_the_letters_of_a_code_stand_apart_in_the_middle_of_their_line(form, options):
    """A thermal head prints a dot wide: with a dot or two between them, letters run into one."""
    printed = Printed(some_codes(24), form, **options)
    for code, label in printed.labels():
        letters = label.copy()
        printed.symbol_with_margin(letters)[:] = 255
        edge = printed.face.edge  # cut marks lie outside
        dark = (letters < 128)[edge:-edge, edge:-edge]
        line = numpy.nonzero(dark.any(axis=1 if printed.face.turned else 0))[0]
        apart = [gap for gap in numpy.diff(line) - 1 if gap]
        assert len(apart) >= len(labels.shown(code)) - 1, code
        assert min(apart) >= 3, code
        before, after = line[0], dark.shape[0 if printed.face.turned else 1] - 1 - line[-1]
        # Letters are not equally wide within their place; none is off by more than a fifth of it.
        assert abs(before - after) <= printed.face.type_size // 500, code
