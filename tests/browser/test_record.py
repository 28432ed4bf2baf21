"""A record goes from one server to another: taken along, verified, shown; an altered one is not."""

import hashlib
from contextlib import closing
from pathlib import Path

import pytest

from server.clock import now_ms
from server.commands.cli import main
from server.log import events
from server.phones.pairing import make_link
from server.phones.roles import BENCH
from server.phones.roles import COUNTER
from server.phones.signing import fingerprint
from server.phones.signing import signer
from server.photos import store as photo_store
from server.storage import DataFolder
from tests.browser.screens import screens
from tests.browser_support import start_server
from tests.browser_support import wait_until
from tests.ports import free_port
from tests.server.keeping import record_yard
from tests.server.keeping.record_yard import BAD_CODE
from tests.server.keeping.record_yard import filled
from tests.server.phone import NOW
from tests.server.phone import jpeg

SHOWN = f"{BAD_CODE[:3]}-{BAD_CODE[3:]}"
UNCONFIRMED = "Nobody has confirmed whose seal this is"


def served(data: Path, package: Path):
    """Serves a data folder as a process of its own, from the installed package."""
    return start_server(data, free_port(), package)


@pytest.fixture(scope="module")
def yard(tmp_path_factory, installed):
    """The server of the yard, with its jobs."""
    data = tmp_path_factory.mktemp("yard") / "data"
    filled(data).stored()
    server = served(data, installed)
    yield server
    server.stop()


@pytest.fixture(scope="module")
def counter(tmp_path_factory, installed):
    """The server of a parts counter elsewhere, which knows nothing of the yard."""
    server = served(tmp_path_factory.mktemp("counter") / "data", installed)
    yield server
    server.stop()


@pytest.fixture
def take_phone(screen_browser):
    """Gives a maker of phones that are paired with a server."""
    phones = []

    def take(server, role=BENCH, **options):
        manager = screens(screen_browser, server.base, **options)
        phone = manager.__enter__()
        phones.append(manager)
        with closing(DataFolder(server.data).open()) as db:
            link = make_link(db, server.base, now_ms(), role=role)
        page = phone.show(link.removeprefix(server.base))
        page.get_by_label("Your name").fill("Jo")
        phone.tap("Pair this phone")
        page.get_by_role("link", name="Check a record").wait_for()
        return phone

    yield take
    for manager in phones:
        manager.__exit__(None, None, None)


@pytest.fixture
def record(yard, tmp_path):
    """The record of the yard's bad sensor, as a file."""
    out = tmp_path / "record.zip"
    assert main(["record", BAD_CODE, "--out", str(out), "--data", str(yard.data)]) == 0
    return out


def choose(phone, file):
    """Opens the page that checks records and gives it a file."""
    page = phone.page
    page.goto(f"{phone.base}/#/record")
    page.get_by_role("heading", name="Is this record as it was made?").wait_for()
    page.get_by_label("The record file").set_input_files(file)


def own_fingerprint(server):
    return fingerprint(signer(DataFolder(server.data)).key)


def test_a_record_taken_from_one_server_is_verified_and_shown_on_another(yard, counter, take_phone, tmp_path):
    phone = take_phone(yard)
    page = phone.show(f"/U/{BAD_CODE}")
    page.get_by_role("link", name="The record as a file").click()
    page.get_by_role("button", name="Make the file").click()
    page.get_by_role("heading", name="The record is ready").wait_for()
    with page.expect_download() as download:
        page.get_by_role("button", name="Save it").click()
    assert download.value.suggested_filename == f"swaptrail-record-{BAD_CODE}.zip"
    file = tmp_path / download.value.suggested_filename
    download.value.save_as(file)
    assert main(["verify", str(file)]) == 0

    clerk = take_phone(counter, COUNTER)
    page = clerk.show()
    page.get_by_role("link", name="Check a record").click()
    page.get_by_text(own_fingerprint(counter)).wait_for()
    choose(clerk, file)
    page.get_by_text("Not changed since it was sealed").wait_for()
    page.get_by_text(own_fingerprint(yard)).wait_for()
    page.get_by_text(UNCONFIRMED).wait_for()
    page.get_by_text("it comes to the same").wait_for()
    page.get_by_text("From another installation").wait_for()
    foreign = page.locator(".foreign")
    assert foreign.locator(".code").first.inner_text() == SHOWN
    foreign.get_by_text("By this record it is at the parts counter.").wait_for()
    foreign.get_by_role("heading", name="The job on Grey estate").wait_for()
    assert foreign.locator(".verdict-sentence").count() >= 1
    wait_until(
        page,
        "() => [...document.querySelectorAll('.foreign img')].filter((i) => i.naturalWidth).length >= 2",
    )
    assert foreign.locator("a, button").count() == 0, "nothing in it leads anywhere or records anything"

    page.goto(f"{clerk.base}/#/")
    page.get_by_role("heading", name="Nothing waits").wait_for()
    choose_again(clerk, file)
    page.get_by_text(UNCONFIRMED).wait_for()  # as loudly as the first time
    page.get_by_text("This seal was first seen here on").wait_for()
    page.get_by_text("Confirm the fingerprint", exact=True).click()
    page.get_by_role("button", name="The fingerprint is the same").click()
    page.get_by_text("Say whose seal it is, and how you compared it.").wait_for()
    page.get_by_label("Whose seal it is").fill("North yard")
    page.get_by_role("radio", name="They were here").check()
    page.get_by_role("button", name="The fingerprint is the same").click()
    page.get_by_text("The seal of North yard").wait_for()
    assert page.get_by_text(UNCONFIRMED).count() == 0
    choose_again(clerk, file)
    page.get_by_text("The seal of North yard").wait_for()


def test_a_record_that_a_counter_keeps_is_evidence_for_its_sensor(
    yard, record, take_phone, tmp_path, installed
):
    here = served(tmp_path / "here", installed)
    try:
        clerk = take_phone(here, COUNTER)
        page = clerk.show()
        page.get_by_role("button", name="Type a code").click()
        page.get_by_label("Code").fill(f"{yard.base}/U/{BAD_CODE}")
        page.get_by_role("button", name="Look it up").click()
        page.get_by_text("A label from elsewhere").first.wait_for()
        page.get_by_role("button", name="Take it in").click()
        page.get_by_role("button", name="Decide later").wait_for()
        page.get_by_role("link", name="Check a record").click()
        choose(clerk, record)
        page.get_by_text("Confirm the fingerprint first.").wait_for()
        page.get_by_text("Confirm the fingerprint", exact=True).click()
        page.get_by_label("Whose seal it is").fill("North yard")
        page.get_by_role("radio", name="They were here").check()
        page.get_by_role("button", name="The fingerprint is the same").click()
        page.get_by_role("button", name="Keep the record for the one from").click()
        page.get_by_text("The record that North yard sealed").first.wait_for()
        assert page.get_by_text("A label from elsewhere", exact=True).count() == 0
        assert page.get_by_role("link", name="Check a record").count() == 0
        with page.expect_download() as download:
            page.get_by_role("button", name="Its record as a file").click()
        assert download.value.path().read_bytes() == record.read_bytes()
        with closing(DataFolder(here.data).open()) as db:
            assert db.conn.execute("SELECT body FROM records_kept").fetchall() == [(record.read_bytes(),)]
    finally:
        here.stop()


def test_what_stands_in_the_place_of_a_photo_is_drawn_only_where_it_is_a_picture_of_ours(
    counter, take_phone, tmp_path, monkeypatch
):
    """A browser draws by what is in a file; and some bytes of a thousand million pixels can end the page."""
    drawing = (
        b'<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"><rect width="9" height="9"/></svg>'
    )
    pictures = {
        "unit": jpeg(),
        "others": drawing,
        "screen": with_size(jpeg(colour=(1, 2, 3)), 60_000, 60_000),
    }
    monkeypatch.setattr(record_yard, "PHOTOS", pictures)
    yard = filled(tmp_path / "liar")
    yard.photo("others")
    with closing(yard.folder.open()) as db:
        events.receive(db, yard.received, None, NOW)
        for data in pictures.values():
            place = photo_store.path_of(yard.folder.photos, hashlib.sha256(data).hexdigest())
            place.parent.mkdir(parents=True, exist_ok=True)
            place.write_bytes(data)
    out = tmp_path / "record.zip"
    assert main(["record", BAD_CODE, "--out", str(out), "--data", str(tmp_path / "liar")]) == 0

    clerk = take_phone(counter, COUNTER)
    choose(clerk, out)
    page = clerk.page
    page.get_by_text("Not changed since it was sealed").wait_for()
    foreign = page.locator(".foreign")
    foreign.get_by_text("It is not drawn.").first.wait_for(state="attached")
    drawn = "pictures => pictures.map((each) => each.naturalWidth)"
    wait_until(page, "() => document.querySelector('.foreign .picture img')?.complete")
    widths = set(foreign.locator(".picture img").evaluate_all(drawn))
    assert widths == {64}


def with_size(picture, width, height):
    """Returns a JPEG whose frame (ITU-T T.81, B.2.2) says that it is so large."""
    at = picture.index(b"\xff\xc0") + 5
    return picture[:at] + height.to_bytes(2) + width.to_bytes(2) + picture[at + 4 :]


def choose_again(phone, file):
    """Puts what is shown away and gives the page a file anew."""
    phone.page.goto(f"{phone.base}/#/record")
    phone.page.get_by_role("button", name="Put it away").click()
    choose(phone, file)


def test_an_altered_record_is_not_shown_and_the_place_is_named(counter, record, take_phone):
    data = record.read_bytes()
    at = data.index(b"rear-left", data.index(b"unit_pulled"))
    record.write_bytes(data[:at] + b"n" + data[at + 1 :])
    clerk = take_phone(counter, COUNTER)
    choose(clerk, record)
    page = clerk.page
    alert = page.get_by_role("alert")
    alert.get_by_text("This record was altered").wait_for()
    alert.get_by_text(
        "First place: device d00000000000000aa, entry 13: its bytes do not match its hash."
    ).wait_for()
    assert page.locator(".foreign").count() == 0

    record.write_bytes(b"something else")
    page.get_by_label("The record file").set_input_files(record)
    page.get_by_text("This file is no record of a sensor or a job.").wait_for()


def test_without_the_server_it_says_what_it_needs(yard, record, take_phone):
    phone = take_phone(yard, worker=True)
    page = phone.show("/#/record")
    page.get_by_role("heading", name="Is this record as it was made?").wait_for()
    phone.loses_network()
    page.get_by_label("The record file").set_input_files(record)
    page.get_by_text("The server is needed for this").wait_for()


SHARES = """
  navigator.canShare = ({ files }) => files.every((file) => file.type === 'application/zip');
  navigator.share = async ({ files }) => { window.shared = files.map((file) => [file.name, file.size]); };
"""


def test_where_the_phone_can_share_a_file_it_is_shared(yard, take_phone):
    phone = take_phone(yard)
    phone.page.add_init_script(SHARES)
    page = phone.show(f"/U/{BAD_CODE}")
    page.reload()
    page.get_by_role("link", name="The record as a file").click()
    page.get_by_role("button", name="Make the file").click()
    page.get_by_role("button", name="Share it").click()
    wait_until(page, "() => window.shared")
    [[name, size]] = page.evaluate("window.shared")
    assert (name, size > 10_000) == (f"swaptrail-record-{BAD_CODE}.zip", True)
    page.get_by_role("button", name="Save it").wait_for()


def test_no_record_is_made_without_the_server_and_it_says_so(yard, take_phone):
    phone = take_phone(yard, worker=True)
    page = phone.show(f"/U/{BAD_CODE}")
    page.get_by_role("link", name="The record as a file").click()
    page.get_by_role("button", name="Make the file").wait_for()
    phone.loses_network()
    page.get_by_role("button", name="Make the file").click()
    page.get_by_text("Only the server can seal a record, and it cannot be reached now.").wait_for()


SIZES = [(width, 844, percent) for width in (320, 390) for percent in (100, 140)]


def test_the_pages_have_room(counter, yard, record, take_phone):
    clerk = take_phone(counter, COUNTER, width=320)
    choose(clerk, record)
    clerk.page.locator(".foreign").wait_for()
    assert clerk.lacking(*SIZES) == {}
    phone = take_phone(yard, width=320)
    phone.show(f"/U/{BAD_CODE}").get_by_role("link", name="The record as a file").click()
    phone.page.get_by_role("button", name="Make the file").click()
    phone.page.get_by_role("heading", name="The record is ready").wait_for()
    assert phone.lacking(*SIZES) == {}
