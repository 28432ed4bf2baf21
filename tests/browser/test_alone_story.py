"""One person, no server: a whole job offline, saved as a file that a new phone and a server go on with."""

import json
import re
from contextlib import closing
from pathlib import Path

import pytest
import qrcode

from server.commands.cli import main
from server.core.codes import labels
from server.core.host import Host
from server.site.make import write
from server.storage import DataFolder
from tests.browser.mechanic import Mechanic
from tests.browser.phone import CODES
from tests.browser.phone import Phone
from tests.browser.phone import taken
from tests.said import english
from tests.static.app_server import AppServer
from tests.static.builds import wait_for_offline_use
from tests.static.file_host import FileHost
from tests.static.phone_parts import Phone as PartsPhone
from tests.wheels import part
from tests.wheels import served_app

OUTER = "right outer"
# From beside the files of the app, which may lie in any folder; the phone may be offline.
CORE = """async ([parts, op, args]) => {
  const { openStore, openDevice, Core, openLog } = await import(parts);
  const store = await openStore();
  const [device, core] = await Promise.all([openDevice(store), Core.start()]);
  await openLog({ store, core, device });
  return core.call(op, args);
}"""


class AlonePhone(Phone):
    """A phone whose app has no server."""

    def visit(self, link: str, name="Mara") -> None:
        """Open the app once and wait until it is there for offline work; nothing is paired."""
        self.page.goto(f"{link}/")
        self.page.get_by_role("button", name=re.compile("Start here|Open a job")).wait_for()
        wait_for_offline_use(self.page, seconds=60)

    def hold(self, code: str) -> None:
        """Hold a label that this app printed before the camera."""
        symbol = qrcode.QRCode(box_size=9, border=4)
        symbol.add_data(labels.address(code, f"{self.base}/"))
        self.camera.show(symbol.make_image().get_image())

    def saves_the_file(self, path: Path) -> Path:
        """Make the file, from wherever the button is, and keep what was downloaded."""
        self.page.get_by_text("The file is ready, not saved yet").wait_for()
        with self.page.expect_download() as download:
            self.tap("Save it")
        download.value.save_as(path)
        self.page.get_by_role("heading", name="The download has begun").wait_for()
        return path

    def takes_in(self, path: Path) -> None:
        """Pick a file on the screen for it."""
        self.page.get_by_label("The file of the other phone").set_input_files(path)
        self.page.get_by_role("heading", name="Taken in", exact=True).wait_for(timeout=60_000)

    def core(self, op: str, **arguments):
        """Ask a core that has read this phone's log anew."""
        page = self.context.new_page()
        script = {"body": part("parts.js"), "content_type": "text/javascript"}
        page.route("**/app/parts.js", lambda route: route.fulfill(**script))
        page.goto(f"{self.base}/")
        page.locator(".screen").wait_for()
        answer = page.evaluate(CORE, [f"{self.base}/app/parts.js", op, arguments])
        page.close()
        return answer


@pytest.fixture
def site(tmp_path):
    """A host of files with the app in a folder of it, and nothing behind it."""
    write(served_app(), tmp_path / "site")
    host = FileHost(tmp_path / "site", "/yard/tools/")
    yield host.base.removesuffix("/")
    host.close()
    assert [path for path in host.paths if "/api/" in path] == []


@pytest.fixture
def take_phone(tmp_path, site):
    """Give a maker of phones; no phone may have complained by the end of the test."""
    yield from taken(lambda name: AlonePhone(tmp_path / name, site))


@pytest.fixture
def server(tmp_path):
    """A server that has never heard of the phone."""
    server = AppServer(tmp_path / "server")
    yield server
    server.close()


def on_server(data: Path, op: str, **arguments):
    """Ask the core what the log of a data folder comes to."""
    with closing(DataFolder(data).open()) as db:
        rows = db.conn.execute("SELECT body FROM events ORDER BY n").fetchall()
    host = Host()
    host.call(json.dumps({"op": "reset", "events": [{"event": json.loads(body)} for (body,) in rows]}))
    answer = json.loads(host.call(json.dumps({"op": op, **arguments})))
    assert answer["ok"], answer
    return answer["value"]


def opens_the_first_job(mechanic, name="Mara", vehicle="Blue estate"):
    """Open a job on a phone that does not know its owner yet."""
    mechanic.phone.tap("Start here")
    mechanic.page.get_by_label("Your name").fill(name)
    mechanic.page.get_by_label("Vehicle", exact=True).fill(vehicle)
    mechanic.page.get_by_role("radio", name="Beeps without reason").tap()
    mechanic.page.get_by_role("radio", name="Rear, 4 sensors").tap()
    mechanic.page.get_by_label("Part number").fill("PS-4711")
    mechanic.phone.tap("Open the job")
    mechanic.looks_around()


def job_of(page) -> str:
    """Return the id of the job on the screen."""
    return page.evaluate("location.hash").split("/")[2]


def test_a_whole_job_without_a_server_lives_on_in_its_file(
    take_phone, tmp_path, capsys, site, server, screen_browser
):
    phone = take_phone("phone")
    phone.visit(site)
    phone.offline()
    mechanic = Mechanic(phone)
    opens_the_first_job(mechanic)
    mechanic.enters_a_test(OUTER)
    mechanic.photographs(4)
    mechanic.starts("Exchange ")
    mechanic.goes_through_the_exchange(mix_up_first=True)
    partner = next(name for name in mechanic.label_of_position if name != OUTER)
    mechanic.enters_a_test(partner)
    phone.wait_step("replace")
    mechanic.replaces_the_sensor()
    mechanic.enters_a_test()
    mechanic.finishes(out=1)
    job = job_of(phone.page)
    told = phone.core("job", job=job)
    assert told["closed"] is not None
    assert told["reasoning"]["verdict"]

    # The close of a job is where the file is saved, still without a network.
    phone.tap("Save the file")
    file = phone.saves_the_file(tmp_path / "first.txt")
    state = phone.core("state")
    phone.tap("Show the jobs")
    phone.see("all in a file")

    # A server takes it in and comes to the same; a phone paired there sees it all.
    data = server.data
    capsys.readouterr()
    assert main(["take-in", str(file), "--data", str(data)]) == 0
    # The made-up camera shows one picture, so the four are one.
    assert re.search(
        r"\d+ entries and 4 photos taken in, 0 entries were here already", capsys.readouterr().out
    )
    assert main(["verify", str(file)]) == 0
    assert main(["verify", str(data)]) == 0
    assert on_server(data, "state") == state
    assert english(on_server(data, "job", job=job)) == told

    # A new phone is set up from it and goes on working, as a device of its own.
    new = take_phone("new")
    new.visit(site)
    new.offline()
    new.page.get_by_role("link", name="I have a file from another phone").tap()
    new.takes_in(file)
    assert new.core("state") == state
    assert new.core("job", job=job) == told
    new.tap("Show the jobs")
    new.page.get_by_text("Blue estate").first.tap()
    new.wait_step("done")
    new.page.goto(f"{site}/#/")
    second = Mechanic(new)
    second.opens_a_job(vehicle="Grey van")
    second.enters_a_test(OUTER)
    new.page.goto(f"{site}/#/file")
    new.tap("Make the file")
    back = new.saves_the_file(tmp_path / "second.txt")

    # The first one takes in what the new one did, and the server does, too: the same everywhere.
    phone.page.goto(f"{site}/#/take-in")
    phone.takes_in(back)
    phone.see("were here already")
    phone.tap("Show the jobs")
    phone.see("Grey van")
    after = new.core("state")
    assert phone.core("state") == after
    assert main(["take-in", str(back), "--data", str(data)]) == 0
    assert on_server(data, "state") == after
    assert main(["verify", str(data)]) == 0
    context = screen_browser.new_context(service_workers="block")
    paired = PartsPhone(context, server)
    paired.sync()
    assert paired.state() == after
    context.close()


def test_a_pairing_link_and_a_label_lead_into_an_app_that_was_never_opened_there(take_phone, site):
    phone = take_phone("phone")
    for address, heading in (
        ("pair#T0KEN", "Nothing to pair here"),
        (f"U/{CODES[0]}", "This phone holds no records yet"),
    ):
        phone.page.goto(f"{site}/{address}")
        phone.page.get_by_role("heading", name=heading).wait_for()
    # The host says of both that it has no such file, which the browser notes.
    assert all("404" in said for said in phone.complaints.heard)
    phone.complaints.heard.clear()
