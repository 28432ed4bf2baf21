"""Printing labels from the phone: a layout chosen, warned about, made, and what became of each label."""

import contextlib

import numpy
import pypdfium2
import pytest
import zxingcpp

from server.core.codes import labels
from tests.browser.screens import screens
from tests.server.phone import Phone
from tests.server.phone import job_opened
from tests.static.app_server import AppServer


@pytest.fixture(params=[390, 320])
def printing(request, screen_browser, tmp_path):
    """Give a paired phone of its own server, at the list of batches."""
    server = AppServer(tmp_path / "data")
    with (
        contextlib.closing(server),
        screens(screen_browser, server.base, width=request.param) as phone,
    ):
        page = phone.show(server.link().removeprefix(server.base))
        page.get_by_label("Your name").fill("Mara")
        phone.tap("Pair this phone")
        page.get_by_role("link", name="sent").or_(page.get_by_role("link", name="nothing to send")).wait_for()
        phone.server = server
        yield phone


def saved(page, words):
    """Tap a button that saves a file; returns its bytes."""
    with page.expect_download() as download:
        page.get_by_role("button", name=words).click()
    return download.value.path().read_bytes(), download.value.suggested_filename


def read_back(pdf, dpi):
    """What an independent decoder reads off the printed pages."""
    found = []
    with pypdfium2.PdfDocument(pdf) as document:
        for index in range(len(document)):
            picture = numpy.array(document[index].render(scale=dpi / 72, grayscale=True).to_numpy())
            found += [symbol.text for symbol in zxingcpp.read_barcodes(picture)]
    return found


def test_a_roll_is_chosen_warned_about_made_and_followed(printing):
    phone, page = printing, printing.show("/#/you")
    page.get_by_role("link", name="Print labels").click()
    page.get_by_text("No labels were printed yet").wait_for()
    phone.tap("Print labels")
    page.get_by_role("button", name="Make 56 labels").wait_for()
    assert phone.lacks_room() == []

    page.get_by_role("radio", name="Roll, one label a page").check()
    page.get_by_role("button", name="Make 50 labels").wait_for()
    page.get_by_label("Label width, mm").fill("30")
    page.get_by_label("Label height, mm").fill("20")
    page.get_by_text("Too small to scan from 20 cm").wait_for()
    page.get_by_text("qrcode.com").wait_for()
    assert phone.lacks_room() == []
    page.get_by_role("radio", name="10 cm").check()
    page.get_by_text("Too small to scan").wait_for(state="detached")
    page.get_by_label("How many labels").fill("3")
    phone.tap("Make 3 labels")

    page.get_by_role("heading", name="3 on paper · 0 on a sensor · 0 void").wait_for()
    pdf, name = saved(page, "Save the PDF")
    assert name == "labels-1.pdf"
    texts = read_back(pdf, 203)
    codes = [text.removeprefix(f"{phone.base}/U/".upper()) for text in texts]
    assert len({code for code in codes if len(code) == 5}) == 3

    page.get_by_text("Some are torn or lost").click()
    page.get_by_role("checkbox", name=f"{codes[0][:3]}-{codes[0][3:]}").check()
    phone.tap("Take this label out of use")
    page.get_by_text("Say in a few words what happened to them.").wait_for()
    page.get_by_label("What happened to them").fill("torn off the roll")
    phone.tap("Take this label out of use")
    page.get_by_role("heading", name="2 on paper · 0 on a sensor · 1 void").wait_for()
    page.get_by_text("torn off the roll").wait_for()

    page.get_by_text("The print failed or was lost").click()
    phone.tap("It is destroyed: make these 2 again")
    page.get_by_text("2 labels are ready to print").wait_for()
    again, _ = saved(page, "Save the PDF")
    assert sorted(read_back(again, 203)) == sorted(texts[1:])
    assert phone.lacks_room() == []
    page.get_by_role("link", name="Back").click()
    page.get_by_text("2 on paper · 0 on a sensor · 1 void").wait_for()
    assert phone.lacks_room() == []


def test_a_sheet_of_own_measures_comes_as_a_drawing_a_page(printing):
    phone, page = printing, printing.show("/#/labels/print")
    page.get_by_text("Measures of the sheet").click()
    page.get_by_role("checkbox", name="The sheet is cut into labels already").check()
    for field, value in {
        "Columns": "3",
        "Rows": "2",
        "Label width, mm": "60",
        "Label height, mm": "400",
    }.items():
        page.get_by_label(field).fill(value)
    page.get_by_text('label: found "60x400", wanted sides of 8 to 300 mm').wait_for()
    assert page.get_by_role("button", name="Make labels").is_disabled()
    page.get_by_label("Label height, mm").fill("40")
    page.get_by_text("3 by 2 labels of 60 x 40 mm").wait_for()
    page.get_by_role("radio", name="SVG, a file a page").check()
    page.get_by_label("How many labels").fill("7")
    assert phone.lacks_room() == []
    phone.tap("Make 7 labels")
    drawing, name = saved(page, "Save page 2")
    assert name == "labels-1-2.svg"
    assert drawing.startswith(b"<svg")
    page.reload()
    page.get_by_role("heading", name="7 on paper · 0 on a sensor · 0 void").wait_for()
    assert page.get_by_role("button", name="Save page 2").count() == 0


def test_a_sensor_that_two_phones_labelled_is_looked_at_and_one_label_goes(printing):
    unit, codes = "v00000000000a.rear-left", labels.codes_from(range(200), 2)
    for number, code in enumerate(codes):
        other = Phone(printing.server.app, f"d{number + 1:016x}", printing.base)
        assert other.pair_by(printing.server.link()).status_code == 200
        other.ask_session()
        if number == 0:
            other.record(kind="job_opened", data=job_opened())
        other.record(kind="unit_labelled", data={"unit": unit, "code": code, "how": "scanned"})
        other.synced()
    first, second = (labels.shown(code) for code in codes)

    page = printing.show("/#/you")
    printing.tap("Send now")
    page.goto(f"{printing.base}/U/{codes[1]}")
    page.get_by_text(f"{first} and {second} are on record for one sensor.").wait_for()
    assert printing.lacks_room() == []
    page.get_by_label("What happened to the label").fill("two on it, took one off")
    printing.tap(f"Take {first} out of use")
    page.get_by_text("are on record for one sensor").wait_for(state="detached")
    page.get_by_text(f"Sensor {second}", exact=True).wait_for()
