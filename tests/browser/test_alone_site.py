"""The app as files in a folder of a plain host, with the network cut: labels and records all the same."""

import re
from types import SimpleNamespace

import pytest
from PIL import Image

from server.commands.cli import main
from server.core.codes import labels
from server.site.make import write
from tests.browser.screens import screens
from tests.browser.test_alone_labels import ANSI_LETTER
from tests.browser.test_alone_labels import address
from tests.browser.test_alone_labels import in_the_log
from tests.browser.test_alone_labels import make
from tests.browser.test_alone_labels import measure
from tests.browser.test_alone_labels import printed
from tests.browser.test_alone_labels import read
from tests.static.builds import wait_for_offline_use
from tests.static.file_host import FileHost
from tests.wheels import served_app


@pytest.fixture(scope="module")
def site(tmp_path_factory):
    """Give the host, and the address that the app is opened by; its folder is not read by case alone."""
    folder = tmp_path_factory.mktemp("site") / "files"
    write(served_app(), folder)
    host = FileHost(folder, "/Garage/trail/")
    yield SimpleNamespace(base=host.base.rstrip("/"))
    host.close()


@pytest.fixture
def phone(camera_browser, site):
    """Give a phone that has been here once and has no network any more."""
    with screens(camera_browser, site.base, worker=True) as phone:
        page = phone.show()
        wait_for_offline_use(page, seconds=60)
        phone.loses_network()
        yield phone


def test_labels_are_printed_scanned_and_opened_without_a_network(phone, site, camera):
    make(phone, taps=["US Letter sheet"])
    page = phone.page
    (codes,) = in_the_log(page)
    (sheet,), (size,), words = printed(page)
    assert size == pytest.approx(ANSI_LETTER, abs=0.3)
    symbols = read(sheet)
    assert sorted(symbol.text for symbol in symbols) == sorted(address(site, code) for code in codes)
    assert f"These labels belong to {site.base}/" in words
    measure(sheet, 300, ruler=True)

    make(phone, 1, taps=["Roll, one label a page"])
    code = in_the_log(page)[1][0]
    ((label,), _, _) = printed(page)
    measure(label, 203, ruler=False)
    # By the camera of the phone, which opens what the symbol holds.
    (symbol,) = read(label)
    page.goto("about:blank")
    page.goto(symbol.text)
    page.get_by_text(labels.shown(code)).first.wait_for()
    # By the app's own scanner.
    camera.show(Image.fromarray(label).reduce(3).convert("RGB"))
    page = phone.show("/#/find")
    phone.tap("Scan")
    page.get_by_text(labels.shown(code)).first.wait_for()
    camera.show()
    phone.tap("Add the spare")
    page.get_by_text(f"Sensor {labels.shown(code)}", exact=True).wait_for()


def test_a_record_is_made_and_checked_without_a_network(phone, tmp_path, capsys):
    make(phone, 1, taps=["Roll, one label a page"])
    ((code,),) = in_the_log(phone.page)
    page = phone.show(f"/#/code/{code}/scanned")
    phone.tap("Add the spare")
    page.get_by_text(f"Sensor {labels.shown(code)}", exact=True).wait_for()
    page.get_by_role("link", name="The record as a file").click()
    phone.tap("Make the file")
    page.get_by_role("heading", name="The record is ready").wait_for()
    file = tmp_path / "record.zip"
    with page.expect_download() as download:
        page.get_by_role("button", name="Save it").click()
    download.value.save_as(file)
    assert main(["verify", str(file)]) == 0
    assert re.search("Sealed by a phone, .*Whose phone it is, the file cannot say", capsys.readouterr().out)
    page = phone.show("/#/record")
    page.locator("#record-file").set_input_files(file)
    page.get_by_text("Not changed since it was sealed").wait_for(timeout=30_000)
