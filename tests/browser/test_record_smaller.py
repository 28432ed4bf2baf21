"""Pictures for which a record has no room: the person is told, offered smaller ones, and the view says so."""

from contextlib import ExitStack
from contextlib import closing

import pytest

from server.commands.cli import main
from tests.browser.screens import screens
from tests.browser_support import wait_until
from tests.server.keeping.record_yard import BAD
from tests.server.keeping.record_yard import PHOTOS
from tests.server.keeping.record_yard import filled
from tests.server.keeping.test_record_smaller import LARGE
from tests.server.keeping.test_record_smaller import PICTURES
from tests.server.keeping.test_record_smaller import SIZE
from tests.static.alone_app import AloneApp
from tests.static.app_server import AppServer
from tests.static.conftest import open_bare
from tests.static.phone_parts import start_parts
from tests.unsent_files import unsent_text

ROOM = int(SIZE * 1.9) + 128 * 1024  # for one of the large pictures as it is
# Filling 48 MB takes too long here, so the core is told of so much text that only this room is left.
LITTLE_ROOM = """((taken) => {
  const post = Worker.prototype.postMessage;
  const fuller = (message) => {
    if (typeof message?.text !== 'string' || !message.text.includes('"record_room"')) return message;
    const call = JSON.parse(message.text);
    return { ...message, text: JSON.stringify({ ...call, text: call.text + taken }) };
  };
  Worker.prototype.postMessage = function (message, ...rest) {
    return post.call(this, fuller(message), ...rest);
  };
})(%d)"""
TAKE_IN = """async (text) => {
  const { Saved, takeInHistory } = await import('/app/parts.js');
  const saved = new Saved(store);
  await saved.start(log);
  await takeInHistory({ core, store, device, saved }, new File([text], 'swaptrail-yard.txt'));
}"""
SIZES = [(width, 844, percent) for width in (320, 390) for percent in (100, 140)]


@pytest.fixture
def yard(tmp_path, monkeypatch):
    """Give a data folder with the story of two customers and three large pictures more."""
    for name, data in PICTURES.items():
        monkeypatch.setitem(PHOTOS, name, data)
    yard = filled(tmp_path / "data")
    for name in LARGE:
        yard.photo(name)
    return yard.stored()


@pytest.fixture
def alone(yard, screen_browser, tmp_path):
    """Give a phone without a server that holds the yard's log and pictures."""
    with ExitStack() as stack:
        site = stack.enter_context(closing(AloneApp(tmp_path / "alone")))
        phone = stack.enter_context(screens(screen_browser, site.base))
        phone.context.add_init_script(LITTLE_ROOM % (48 * 1024 * 1024 - ROOM))
        page = open_bare(phone.context, site.base)
        start_parts(page)
        page.evaluate(TAKE_IN, unsent_text(yard.received, list(PHOTOS.values())))
        page.close()
        yield phone


@pytest.fixture
def paired(yard, screen_browser, monkeypatch):
    """Give a phone that is paired with the yard's server."""
    monkeypatch.setattr("server.core.record.file.MOST_BYTES", ROOM)
    with closing(AppServer(yard.folder.root)) as server, screens(screen_browser, server.base) as phone:
        page = phone.show(server.link().removeprefix(server.base))
        page.get_by_label("Your name").fill("Jo")
        phone.tap("Pair this phone")
        page.get_by_role("link", name="Check a record").wait_for()
        yield phone


@pytest.mark.parametrize(("maker", "place"), [("alone", "this phone"), ("paired", "the server")])
def test_smaller_pictures_are_offered_made_and_named_for_what_they_are(
    maker, place, request, tmp_path, capsys
):
    phone = request.getfixturevalue(maker)
    page = phone.show(f"/#/unit/{BAD}/file")
    phone.tap("Make the file")
    page.get_by_text("2 pictures have no room in it").wait_for()
    assert phone.lacking(*SIZES) == {}
    page.get_by_role("button", name="With smaller pictures").click()
    page.get_by_text(f"2 pictures are in it as smaller versions. The originals stay on {place}.").wait_for()
    assert page.get_by_text("no room in it").count() == 0
    assert phone.lacking(*SIZES) == {}
    with page.expect_download() as download:
        page.get_by_role("button", name="Save it").click()
    record = tmp_path / "record.zip"
    download.value.save_as(record)
    assert record.stat().st_size <= ROOM
    assert main(["verify", str(record)]) == 0
    assert "2 pictures in it are smaller versions." in capsys.readouterr().out

    page = phone.show("/#/record")
    page.locator("#record-file").set_input_files(record)
    page.get_by_text("Not changed since it was sealed").wait_for(timeout=30_000)
    page.get_by_text("2 pictures in it are smaller versions.").wait_for()
    assert page.get_by_text("not in the file").count() == 0
    sealer = place.split()[-1]
    notes = page.get_by_text(f"Smaller version; the original is on the {sealer} that sealed it")
    assert notes.count() == 2
    wait_until(
        page,
        """() => [...document.querySelectorAll('.foreign img')]
          .filter((img) => img.naturalWidth === 1280 && img.naturalHeight === 960).length === 2""",
    )
    assert phone.lacking(*SIZES) == {}
