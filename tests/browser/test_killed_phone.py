"""The browser is killed during an exchange, while a picture is saved, while it sends, also to a log that
began anew, and while it takes a file in: what a screen had confirmed is there, once, and phone and server
end alike.

SWAPTRAIL_LONG=1 kills it a hundred times, and a hundred times more at the last.
"""

import contextlib
import hashlib
import random
import re
from collections import Counter

from playwright.sync_api import Error as BrowserError

from server.core.codes import labels
from server.core.log import canon
from server.core.log import chain
from server.core.log import envelope
from server.keeping import rejoin
from server.keeping.verify.data_folder import FOLDER
from tests.browser.killing import Killer
from tests.browser.mechanic import Mechanic
from tests.browser.phone import Phone
from tests.browser_support import launch_profile
from tests.browser_support import wait_until
from tests.long_runs import times
from tests.server.phone import entry_after
from tests.server.phone import job_opened
from tests.server.phone import jpeg
from tests.static.phone_parts import open_bare
from tests.static.phone_parts import start_parts
from tests.static.phone_parts import state_on_server
from tests.unsent_files import unsent_text

KILLS = times(3, 100)
KILLS_OF_TAKE_IN = times(2, 100)
OUTER = "right outer"
# What a round waits for before the clock of the kill begins to run, and how long it may run at most.
TARGETS = ({"photo": 0.6, "exchange": 2.5}, {"sync": 1.5}, {"exchange": 2.5})
OFFLINE_STEPS = 3
MAY_COME_AGAIN = {"test_run", "move_started"}

PLAIN = {
    "cautions": "I have read these",
    "look": "All as it should be",
}

# The step is another one, or the camera waits for the next picture.
ANOTHER_PICTURE = """(before) => {
  const step = document.querySelector('[data-step]');
  const button = document.querySelector('.main-button:not([disabled])');
  return Boolean(step && (step.dataset.step !== 'photo' || button && button.innerText !== before));
}"""

# Read from the database beside the app, as nobody but a disk can answer for what was kept.
KEPT = """async () => {
  const db = await new Promise((resolve, reject) => {
    const request = indexedDB.open('swaptrail');
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
  const all = (table, keys) => new Promise((resolve, reject) => {
    const store = db.transaction(table).objectStore(table);
    const request = keys ? store.getAllKeys() : store.getAll();
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
  const digest = async (bytes) => {
    const hash = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
    return Array.from(hash, (byte) => byte.toString(16).padStart(2, '0')).join('');
  };
  const [events, photos, names, bytes] = await Promise.all(
    [all('events'), all('photos'), all('photo_bytes', true), all('photo_bytes')]);
  db.close();
  return {
    entries: events.filter(({ own }) => own).map(({ event, hash }) => ({ event, hash })),
    brought: events.filter(({ own }) => !own).map(({ hash }) => hash),
    photos: photos.map(({ sha256 }) => sha256),
    pictures: await Promise.all(bytes.map(async (each, n) => [names[n], await digest(each)])),
  };
}"""


class Tireless(Mechanic):
    """Does what the app asks for next, job after job, until the phone dies; remembers what it was shown."""

    def __init__(self, data):
        """Start with a roll of labels and no phone; `data` is the folder of the server."""
        self.data = data
        self.dice = random.Random(20_261_125)
        count = 4 * KILLS + 10
        self.roll = labels.codes_from([self.dice.randrange(256) for _ in range(200 * count)], count)
        self.label_of_position = {}
        self.confirmed = {}
        self.jobs = 0
        self.phone = self.page = self.killer = None
        self.targets, self.hit_now = {}, None
        self.hit = Counter()

    def takes(self, phone, killer, targets):
        """Go on with this phone, in a round that ends at one of these activities."""
        self.phone, self.page, self.killer, self.targets = phone, phone.page, killer, targets
        self.hit_now = None

    def begins(self, activity):
        """Start the clock of the kill if the round is about this."""
        if self.hit_now is None and activity in self.targets:
            self.hit_now = activity
            self.killer.arm(self.dice.uniform(0, self.targets[activity]))

    def works(self):
        """Work until the phone is dead."""
        with contextlib.suppress(BrowserError):
            self.page.goto(f"{self.phone.base}/#/")
            self.page.get_by_role("button", name="Open a job").wait_for()
            if self.page.locator(".job-list a").count():
                self.page.locator(".job-list a").first.tap()
            else:
                self.opens_a_job()
            if "sync" in self.targets:
                self.phone.offline()
                for _ in range(OFFLINE_STEPS):
                    self.goes_on()
                if self.dice.random() < 0.5:
                    rejoin.run(self.data)
                self.phone.online()
                self.begins("sync")
            while True:
                self.goes_on()
        self.hit[self.hit_now] += 1

    def goes_on(self):
        """Do the present step, then note what is kept while the next one is on the screen."""
        step = self.phone.step()
        title = self.told()
        if step in PLAIN:
            self.phone.tap(PLAIN[step])
        elif step == "photo":
            self.takes_a_picture()
            self.notes()
            return
        elif step == "test":
            self.enters_a_test(*self.fault())
        elif step == "move":
            self.begins("exchange")
            self.phone.tap("Exchange ")
        elif step in {"pull", "fit", "lock"}:
            self.begins("exchange")
            self.exchanges(step, title)
        else:
            self.opens_the_next()
            return
        self.leaves(title)
        self.notes()

    def exchanges(self, step, title):
        """One movement of the exchange."""
        if step == "pull":
            self.pulls(title)
        elif step == "fit":
            self.scans(title.split()[1].replace("-", ""))
        else:
            self.page.locator(".main-button").tap()

    def takes_a_picture(self):
        """Take the picture of a position."""
        shutter = self.page.get_by_role("button", name=re.compile("^Take "))
        shutter.or_(self.page.get_by_role("button", name="Open the camera")).first.wait_for()
        if not shutter.count():
            self.phone.tap("Open the camera")
        wait_until(self.page, "() => document.querySelector('video')?.videoWidth > 0")
        before = shutter.inner_text()
        self.begins("photo")
        shutter.tap()
        wait_until(self.page, ANOTHER_PICTURE, before)

    def fault(self):
        """Return where the fault shows: at first at one place, after the exchange at the other."""
        return [next((name for name in self.label_of_position if name != OUTER), OUTER)]

    def opens_the_next(self):
        """Leave the job where the fault was found and open another."""
        self.label_of_position = {}
        self.page.goto(f"{self.phone.base}/#/")
        self.page.get_by_role("button", name="Open a job").wait_for()
        self.jobs += 1
        self.opens_a_job(vehicle=f"Estate {self.jobs}")

    def notes(self):
        """Note what is kept while a screen says so."""
        for entry in self.page.evaluate(KEPT)["entries"]:
            self.confirmed[entry["event"]["device"], entry["event"]["seq"]] = entry["hash"]


def assert_nothing_lost(kept, confirmed):
    """Hold what is on the phone against what was seen on it: nothing lost, doubled, half or out of order."""
    entries = kept["entries"]
    events = [entry["event"] for entry in entries]
    hashes = {(each["event"]["device"], each["event"]["seq"]): each["hash"] for each in entries}
    assert confirmed.items() <= hashes.items()
    assert len({event["device"] for event in events}) == 1
    assert chain.first_fault(events) is None
    assert [entry["hash"] for entry in entries] == [envelope.hash_of(event) for event in events]
    facts = Counter(
        (event["job"], event["kind"], canon.dumps(event["data"]))
        for event in events
        if event["kind"] not in MAY_COME_AGAIN
    )
    assert [fact for fact, times_ in facts.items() if times_ > 1] == []
    assert [name for name, digest in kept["pictures"] if name != digest] == []
    # A picture is kept with the entry that names it, or not at all.
    named = {event["data"]["sha256"] for event in events if event["kind"] == "photo_taken"}
    assert named == set(kept["photos"]) == {name for name, _ in kept["pictures"]}


def test_what_a_screen_confirmed_survives_a_kill_at_any_moment(tmp_path, app_server):
    mechanic = Tireless(app_server.data)
    folder = tmp_path / "phone"
    phone = Phone(folder, app_server.base)
    phone.visit(app_server.link())
    phone.close()  # a browser writes down cookies late: one that is killed at once has to be paired again
    phone = Phone(folder, app_server.base)

    for kill in range(KILLS):
        killer = Killer(folder / "profile")
        mechanic.takes(phone, killer, TARGETS[kill % len(TARGETS)])
        mechanic.works()
        killer.bury()
        with contextlib.suppress(BrowserError):
            phone.context.close()
        phone = Phone(folder, app_server.base)
        phone.page.goto(app_server.base)
        phone.page.locator(".screen").wait_for()
        assert_nothing_lost(phone.page.evaluate(KEPT), mechanic.confirmed)

    assert mechanic.hit.total() == KILLS
    assert set(mechanic.hit) == {"photo", "sync", "exchange"}
    phone.page.goto(f"{app_server.base}/#/outbox")
    phone.page.get_by_role("heading", name="All sent").wait_for(timeout=60_000)
    kept = phone.page.evaluate(KEPT)
    assert_nothing_lost(kept, mechanic.confirmed)
    phone.close()
    assert_server_has_it(app_server, kept)
    assert state_of_phone(folder, app_server.base) == state_on_server(app_server)


def assert_server_has_it(app_server, kept):
    """Hold the server against the phone: the same entries once, every picture, an intact folder."""
    assert app_server.rows("SELECT hash FROM events ORDER BY n") == [
        (entry["hash"],) for entry in kept["entries"]
    ]
    assert {digest for (digest,) in app_server.rows("SELECT sha256 FROM photos")} == set(kept["photos"])
    for file in (app_server.data / "photos").rglob("*.jpg"):
        assert hashlib.sha256(file.read_bytes()).hexdigest() == file.stem
    assert FOLDER.first_fault(app_server.data) is None


def test_a_phone_that_is_killed_has_taken_a_file_in_as_a_whole_or_not_at_all(tmp_path, app_server):
    dice = random.Random(20_261_130)
    folder, file = tmp_path / "phone", tmp_path / "swaptrail-unsent.txt"
    phone = Phone(folder, app_server.base)
    phone.visit(app_server.link())
    phone.close()
    phone = Phone(folder, app_server.base)
    there = set()

    for number in range(KILLS_OF_TAKE_IN):
        pictures = [jpeg(300, 200, (number % 256, shade, 90)) for shade in range(0, 60, 10)]
        entries = chain_of_another(f"d{number + 4096:016x}", pictures)
        file.write_text(unsent_text(entries, pictures, entries[0]["event"]["device"]))
        wanted = {entry["hash"] for entry in entries}
        killer = Killer(folder / "profile")
        with contextlib.suppress(BrowserError):
            given = open_outbox(phone).get_by_label("Take in a file")
            given.wait_for(state="attached")
            killer.arm(dice.uniform(0, 2))
            given.set_input_files(file)
        killer.bury()
        with contextlib.suppress(BrowserError):
            phone.context.close()

        phone = Phone(folder, app_server.base)
        page = open_outbox(phone)
        kept = page.evaluate(KEPT)
        assert set(kept["brought"]) - there in (set(), wanted)
        assert [name for name, digest in kept["pictures"] if name != digest] == []
        page.get_by_label("Take in a file").set_input_files(file)
        page.get_by_text(re.compile("came in|were here already")).first.wait_for()
        there |= wanted
        kept = page.evaluate(KEPT)
        assert set(kept["brought"]) == there
        assert {hashlib.sha256(each).hexdigest() for each in pictures} <= set(kept["photos"])
    phone.close()


def open_outbox(phone):
    """Open the screen of what waits, on which a file is taken in; return the page."""
    phone.page.goto(f"{phone.base}/#/outbox")
    # Not the picture of what it showed last.
    phone.page.locator("#app:not([inert]) .screen").wait_for()
    return phone.page


def chain_of_another(device, pictures):
    """Return what another phone recorded: a job, some hundred entries and these pictures."""
    entries = [entry_after([], device, "job_opened", job_opened(), f"j{device[-12:]}")]
    facts = [("cleaned", {"position": "rear-left", "note": str(number)}) for number in range(300)]
    for picture in pictures:
        data = {"sha256": hashlib.sha256(picture).hexdigest(), "mime": "image/jpeg", "bytes": len(picture),
                "width": 300, "height": 200, "shows": "work", "position": "", "unit": ""}  # fmt: skip
        facts.append(("photo_taken", data))
    for kind, data in facts:
        entries.append(entry_after(entries, device, kind, data, entries[0]["event"]["job"]))
    return entries


def state_of_phone(folder, base):
    """Return the state that the phone's core folds from what is on it."""
    context = launch_profile(folder / "profile", service_workers="block")
    page = open_bare(context, base)
    start_parts(page)
    state = page.evaluate("core.call('state')")
    context.close()
    return state
