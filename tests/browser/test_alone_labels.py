"""A phone without a server prints its own labels: at their size, read back, and no code twice."""

import contextlib
import re

import numpy
import pypdfium2
import pytest
import zxingcpp
from PIL import Image

from server.core.codes import labels
from server.web.shell import find_static
from tests.browser.paper import POINTS_A_MM
from tests.browser.phone_log import facts
from tests.browser.screens import screens
from tests.static.alone_app import AloneApp

ISO_216_A4, ANSI_LETTER = (210, 297), (215.9, 279.4)
DPI = 600  # finer than any label printer, so that what is measured is the page and not its picture


@pytest.fixture(scope="module")
def site(tmp_path_factory):
    """Give the app without a server."""
    with contextlib.closing(AloneApp(tmp_path_factory.mktemp("alone"))) as app:
        yield app


@pytest.fixture(params=[390])
def alone(request, camera_browser, site):
    """Give a phone with that app."""
    with screens(camera_browser, site.base, width=request.param) as phone:
        phone.show()
        yield phone
    assert site.asked() == []


@pytest.fixture
def alone_of_modules(camera_browser, tmp_path):
    """Give a phone with that app as a developer runs it: its modules can be reached one by one."""
    with (
        contextlib.closing(AloneApp(tmp_path / "modules", find_static())) as app,
        screens(camera_browser, app.base) as phone,
    ):
        phone.show()
        yield phone
        assert app.asked() == []


def make(phone, count=None, **choices):
    """Choose paper and number, make the labels and go to their page; returns the number of the batch."""
    page = phone.show("/#/labels/print")
    page.get_by_role("button", name=re.compile(r"Make \d+ label")).wait_for()
    for words in choices.get("taps", ()):
        page.get_by_role("radio", name=words, exact=True).check()
    for field, value in choices.get("fields", {}).items():
        page.get_by_label(field).fill(value)
    if count:
        page.get_by_label("How many labels").fill(str(count))
    page.get_by_role("button", name=f"Make {count or ''}".strip()).click()
    page.get_by_role("heading", name=re.compile("ready to print")).wait_for()
    assert phone.lacks_room() == []
    batch = int(page.url.rpartition("/")[2])
    phone.tap("To the printer")
    page.locator(".label-sheet").wait_for()
    assert phone.lacks_room() == []
    return batch


def printed(page):
    """Print what is on the screen as Chromium would; returns the pages, their sizes in mm, and the words."""
    with pypdfium2.PdfDocument(page.pdf(prefer_css_page_size=True, print_background=True)) as document:
        sizes = [[side / POINTS_A_MM for side in document[n].get_size()] for n in range(len(document))]
        pictures = [
            numpy.array(document[n].render(scale=DPI / 72, grayscale=True).to_numpy())
            for n in range(len(document))
        ]
        words = " ".join(document[n].get_textpage().get_text_range() for n in range(len(document)))
    return pictures, sizes, words


def read(picture):
    """What a decoder that is not ours finds; it takes some rows of a sheet for the bars of another symbol."""
    return zxingcpp.read_barcodes(Image.fromarray(picture).reduce(2), formats=zxingcpp.BarcodeFormat.QRCode)


def address(site, code):
    """What a label holds: the folder of the app, in capitals where case does not count, then the code."""
    scheme, host, path = re.fullmatch("(https?)://([^/]+)(.*)", site.base).groups()
    return f"{scheme.upper()}://{host.upper()}{path}/#{code}"


def in_the_log(page):
    """The codes of each printing that the phone has on record."""
    printings = [fact["data"] for fact in facts(page) if fact["kind"] == "labels_printed"]
    return [printing["codes"] for printing in printings]


PAPERS = {
    "A4": ([], None, ISO_216_A4, 300),
    "Letter": (["US Letter sheet"], None, ANSI_LETTER, 300),
    "50 x 30": (["Roll, one label a page", "50 x 30 mm"], 3, (50, 30), 203),
    "58 mm roll": (["Roll, one label a page", "58 mm roll"], 2, (58, 30), 203),
    "80 mm roll": (["Roll, one label a page", "80 mm roll"], 2, (80, 40), 203),
}


@pytest.mark.parametrize(
    ("alone", "paper"),
    [(390, "A4"), (320, "Letter"), (390, "50 x 30"), (320, "58 mm roll"), (390, "80 mm roll")],
    indirect=["alone"],
)
def test_labels_come_out_at_their_size_and_read_back(alone, site, paper):
    taps, count, size, dpi = PAPERS[paper]
    make(alone, count, taps=taps)
    page = alone.page
    (codes,) = in_the_log(page)
    pictures, sizes, words = printed(page)

    a_page = 1 if count else len(codes)
    assert len(pictures) == len(codes) // a_page
    for found in sizes:
        assert found == pytest.approx(size, abs=0.3)  # a PDF of Chromium is in whole 1/72 inch; 0.35 mm
    symbols = [symbol for picture in pictures for symbol in read(picture)]
    assert sorted(symbol.text for symbol in symbols) == sorted(address(site, code) for code in codes)
    for code in codes:
        assert code[0] in labels.PRINT_FIRST
        assert labels.may_be_issued(code)
        assert labels.shown(code) in words
    for picture in pictures[:1]:
        measure(picture, dpi, ruler=a_page > 1)


def test_no_code_is_printed_twice_and_a_failed_print_only_where_no_sensor_has_the_label(alone, site):
    batch = make(alone, 6, taps=["Roll, one label a page"])
    page = alone.page
    (codes,) = in_the_log(page)

    page.reload()  # what was shown once is not shown again without a word
    page.get_by_text("These labels went to the printer before").wait_for()
    assert alone.lacks_room() == []
    assert page.locator(".label-page").count() == 0

    spare = codes[0]
    page = alone.show(f"/#{spare}")  # what the camera of the phone opens
    page.get_by_text("A fresh label").or_(page.get_by_text("This phone holds no record")).first.wait_for()
    page = alone.show(f"/#/code/{spare}/scanned")
    page.get_by_role("heading", name="No sensor has this label yet").wait_for()
    page.get_by_label("Part number").fill("PS-1")
    alone.tap("Add the spare")
    page.get_by_text(f"Sensor {labels.shown(spare)}", exact=True).wait_for()

    page = alone.show(f"/#/labels/{batch}")
    page.get_by_role("heading", name="5 on paper · 1 on a sensor · 0 void").wait_for()
    page.get_by_text("The print failed or was lost").click()
    alone.tap("It is destroyed: make these 5 again")
    page.get_by_text("5 labels are ready to print").wait_for()
    alone.tap("To the printer")
    page.locator(".label-sheet").wait_for()
    texts = [symbol.text for picture in printed(page)[0] for symbol in read(picture)]
    assert sorted(texts) == sorted(address(site, code) for code in codes[1:])

    make(alone, 9, taps=["Roll, one label a page"])
    first, again, second = in_the_log(page)
    assert sorted(again) == sorted(codes[1:])
    assert not set(second) & set(first)


def test_labels_that_were_printed_by_mistake_go_out_of_use_and_no_sensor_takes_them(alone):
    batch = make(alone, 3, taps=["Roll, one label a page"])
    (codes,) = in_the_log(alone.page)
    page = alone.show(f"/#/labels/{batch}")
    page.get_by_text("Some are torn or lost").click()
    page.get_by_role("checkbox", name=labels.shown(codes[0])).check()
    alone.tap("Take this label out of use")
    page.get_by_text("Say in a few words what happened to them.").wait_for()
    page.get_by_label("What happened to them").fill("the wrong paper")
    alone.tap("Take this label out of use")
    page.get_by_role("heading", name="2 on paper · 0 on a sensor · 1 void").wait_for()
    assert page.get_by_text("the wrong paper").is_visible()
    assert alone.lacks_room() == []

    page.get_by_text("The print failed or was lost").click()
    alone.tap("It is destroyed: make these 2 again")
    page.get_by_text("2 labels are ready to print").wait_for()
    assert sorted(in_the_log(page)[-1]) == sorted(codes[1:])

    page = alone.show(f"/#/code/{codes[0]}/scanned")
    page.get_by_label("Part number").fill("PS-1")
    alone.tap("Add the spare")
    page.get_by_text("was taken out of use").first.wait_for()


def test_the_file_of_the_labels_prints_at_their_size_too(alone, site, tmp_path):
    """From a computer with a printer, say: the file stands alone."""
    make(alone, 3, taps=["Roll, one label a page", "80 mm roll"])
    page = alone.page
    (codes,) = in_the_log(page)
    with page.expect_download() as download:
        page.get_by_role("button", name="Save as a file").click()
    file = tmp_path / download.value.suggested_filename
    assert file.name == f"Labels-of-batch-{page.url.split('/')[-2]}.html"
    download.value.save_as(file)
    other = alone.context.new_page()
    other.goto(file.as_uri())
    pictures, sizes, words = printed(other)
    assert len(pictures) == 3
    assert all(size == pytest.approx((80, 40), abs=0.3) for size in sizes)
    texts = [symbol.text for picture in pictures for symbol in read(picture)]
    assert sorted(texts) == sorted(address(site, code) for code in codes)
    assert all(labels.shown(code) in words for code in codes)
    measure(pictures[0], 203, ruler=False)


def test_a_code_that_was_printed_is_refused_for_another_batch(alone_of_modules):
    """Two tabs may draw at once: the log takes a code for one batch alone."""
    alone = alone_of_modules
    make(alone, 2, taps=["Roll, one label a page"])
    ((code, _),) = in_the_log(alone.page)
    page = alone.show("/#/labels/print")
    # The other tab draws what this one has just drawn.
    page.evaluate(SAME_CODES_AGAIN, code)
    page.get_by_role("radio", name="Roll, one label a page").check()
    page.get_by_label("How many labels").fill("1")
    alone.tap("Make 1 label")
    page.get_by_text("This label was printed before").wait_for()
    assert len(in_the_log(page)) == 1


def test_the_scanner_of_the_app_reads_a_printed_label(alone, site, camera):
    make(alone, 1, taps=["Roll, one label a page"])
    page = alone.page
    ((code,),) = in_the_log(page)
    ((picture,), _, _) = printed(page)
    camera.show(Image.fromarray(picture).reduce(3).convert("RGB"))
    page = alone.show("/#/find")
    alone.tap("Scan")
    page.get_by_text(labels.shown(code)).first.wait_for()
    assert code in page.url


SAME_CODES_AGAIN = """async (code) => {
  const { Core } = await import(new URL('core/client.js', document.querySelector('script[type=module]').src));
  const call = Core.prototype.call;
  Core.prototype.call = function (op, ...more) {
    return op === 'new_labels' ? Promise.resolve([code]) : call.call(this, op, ...more);
  };
}"""


def measure(picture, dpi, ruler):
    """Modules at least 4 dots and 0.5 mm, four modules of margin on each side, a bar of 100 mm.

    Sources: qrcode.com, howto/cell.html (4 dots, 0.5 mm at 203 dpi) and ISO/IEC 18004 (the margin).
    """
    dark = picture < 128
    for symbol in read(picture)[:4]:
        modules = 17 + 4 * int(symbol.extra["Version"])
        corner = symbol.position.top_left
        left, top = corner.x * 2, corner.y * 2
        rough = (symbol.position.top_right.x * 2 - left) / modules
        # The edges of the symbol itself, within a module and a half of where the decoder saw it.
        more, side = round(1.5 * rough), round(rough * modules)
        around = dark[top - more : top + side + more, left - more : left + side + more]
        rows, columns = around.any(axis=1).nonzero()[0], around.any(axis=0).nonzero()[0]
        y, x = top - more + rows.min(), left - more + columns.min()
        high, wide = rows.max() - rows.min() + 1, columns.max() - columns.min() + 1
        module = wide / modules
        assert high == pytest.approx(wide, abs=2)
        assert module / DPI * 25.4 >= max(0.5, 4 * 25.4 / dpi) - 0.002
        assert module / DPI * dpi == pytest.approx(round(module / DPI * dpi), abs=0.04)  # whole dots
        quiet = int(4 * module) - 1
        ring = dark[y - quiet : y + high + quiet, x - quiet : x + wide + quiet].copy()
        ring[quiet:-quiet, quiet:-quiet] = False
        assert not ring.any()
    if ruler:
        lowest = dark.any(axis=1).nonzero()[0].max()
        assert dark[lowest - 2].sum() / DPI * 25.4 == pytest.approx(100, abs=0.1)
