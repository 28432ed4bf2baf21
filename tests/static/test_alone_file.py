"""Without a server: all leaves as one file, a new phone is set up from it, nothing is lost on the way."""

import random

import pytest
from PIL import Image

from tests.browser_support import Complaints
from tests.browser_support import wait_until
from tests.static.alone_app import AloneApp
from tests.static.phone_parts import Recording
from tests.static.phone_parts import open_bare
from tests.static.phone_parts import start_parts
from tests.static.pictures import picture
from tests.static.test_log import quota
from tests.unsent_files import unsent_text

PARTS = """async () => {
  const { Saved } = await import('/app/parts.js');
  window.saved = new Saved(store);
  window.wholeFile = (await import('/app/parts.js')).historyFile;
  const { takeInHistory } = await import('/app/parts.js');
  window.takeIn = (text, name = 'swaptrail-try.txt') =>
    say(async () => {
      const taken = await takeInHistory({ core, store, device, saved }, new File([text], name));
      await log.catchUp();
      return taken;
    });
  await saved.start(log);
}"""

WHOLE = "async () => (await wholeFile(store)).file.text()"


class AlonePhone(Recording):
    """One phone without a server, with the parts of the app on its page and no screens."""

    def __init__(self, context, app):
        self.app = app
        self.complaints = Complaints(app.base)
        self.page = open_bare(context, app.base, self.complaints)
        self.device = start_parts(self.page)
        self.page.evaluate(PARTS)

    def file(self) -> str:
        """Make the file of everything and return its text."""
        return self.page.evaluate(WHOLE)

    def takes_in(self, text: str):
        return self.page.evaluate("(text) => takeIn(text)", text)

    def names(self) -> list[tuple]:
        """Return (device, seq) of everything it holds, in its order."""
        keys = self.page.evaluate("async () => (await records()).map(({ device, seq }) => [device, seq])")
        return [tuple(key) for key in keys]

    def state(self):
        return self.page.evaluate("core.call('state')")

    def pictures(self) -> list[str]:
        """Return the hashes of the pictures whose bytes are here, each held against its bytes."""
        return self.page.evaluate(
            """async () => {
              const { sha256Hex } = await import('/app/parts.js');
              const keys = await store.withDb((db) => db.getAllKeys('photo_bytes'));
              for (const key of keys) if ((await sha256Hex(await store.photoBytes(key))) !== key) throw key;
              return keys;
            }"""
        )

    def standing(self):
        self.page.evaluate("saved.count()")
        return self.page.evaluate("saved.standing.value")

    def saves(self, how="shared"):
        """Make the file, and confirm it as the screen does after a share."""
        return self.page.evaluate(
            """async (how) => {
              const { file, upTo, held } = await wholeFile(store);
              await saved.note({ name: file.name, at: Date.now(), how, upTo, ...held });
              return file.text();
            }""",
            how,
        )


@pytest.fixture(scope="session")
def alone_app(tmp_path_factory):
    server = AloneApp(tmp_path_factory.mktemp("alone"))
    yield server
    server.close()


@pytest.fixture
def take_phone(browser, alone_app):
    """Give a maker of phones; none asked for a server, and none complained."""
    alone_app.requests.clear()
    contexts, phones = [], []

    def take():
        contexts.append(browser.new_context(service_workers="block"))
        phones.append(AlonePhone(contexts[-1], alone_app))
        return phones[-1]

    yield take
    heard = [said for phone in phones for said in phone.complaints.heard]
    for context in contexts:
        context.close()
    assert heard == []
    assert alone_app.asked() == []


def test_a_new_phone_is_set_up_from_the_file_and_goes_on_as_a_device_of_its_own(take_phone):
    old, new = take_phone(), take_phone()
    old.page.evaluate("device.setActor('Mara')")
    old.record("one", "two")
    old.record_photo(picture())

    taken = new.takes_in(old.file())

    assert taken == {"entries": 4, "photos": 1, "known": 0, "cutOff": None}
    assert new.names() == old.names() == [(old.device, seq) for seq in (1, 2, 3, 4)]
    assert new.state() == old.state()
    assert new.pictures() == old.pictures() != []
    assert new.page.evaluate("device.actor") == "Mara"
    new.record("three")
    assert new.names()[-1] == (new.device, 1)
    assert new.device != old.device
    assert new.page.evaluate("async () => (await records()).at(-1).event.prev") == ""


def test_two_phones_take_in_each_others_file_and_hold_the_same(take_phone):
    one, two = take_phone(), take_phone()
    one.record("a1", "a2")
    two.takes_in(one.file())
    two.record("b1")
    one.record("a3")

    assert one.takes_in(two.file()) == {"entries": 1, "photos": 0, "known": 2, "cutOff": None}
    assert two.takes_in(one.file())["entries"] == 1
    again = one.takes_in(two.file())

    assert again == {"entries": 0, "photos": 0, "known": 4, "cutOff": None}
    a, b = one.device, two.device
    # The order in which each came to know them, and so it stands in the next file.
    assert one.names() == [(a, 1), (a, 2), (a, 3), (b, 1)]
    assert two.names() == [(a, 1), (a, 2), (b, 1), (a, 3)]
    third = take_phone()
    third.takes_in(one.file())
    assert third.names() == one.names()
    assert third.state() == one.state()


def test_a_copied_phone_gets_an_identity_of_its_own_when_the_two_meet(take_phone):
    old = take_phone()
    old.record("shared 1", "shared 2")
    copy = take_phone()
    copy.takes_in(old.file())
    # What a phone does that was copied whole: it goes on with the other's chain.
    copy.page.evaluate(
        """async ([id, last]) => {
          const head = await store.getMeta('head');
          await store.setMeta('head', { ...head, device: id, seq: 2, hash: last });
          await device.reread();
        }""",
        [old.device, old.page.evaluate("async () => (await records()).at(-1).hash")],
    )
    old.record("old 3")
    copy.record("copy 3", "copy 4")

    taken = copy.takes_in(old.file())

    fresh = copy.page.evaluate("device.id")
    assert taken["entries"] == 1, taken
    assert fresh != old.device
    assert sorted(copy.names()) == sorted([*((old.device, seq) for seq in (1, 2, 3)), (fresh, 1), (fresh, 2)])
    assert "has a new one now" in copy.page.evaluate("device.notice.value.sentence")
    # The other one takes that in without a question, and both hold everything.
    assert old.takes_in(copy.file())["entries"] == 2
    assert sorted(old.names()) == sorted(copy.names())
    assert {"old 3", "copy 3", "copy 4"} <= set(parts_of(old))


def test_two_other_phones_of_one_identity_are_refused_with_what_to_do(take_phone):
    one, other, third = take_phone(), take_phone(), take_phone()
    one.record("one")
    third.takes_in(one.file())
    other.page.evaluate(
        """async (id) => {
          await store.setMeta('head', { ...(await store.getMeta('head')), device: id });
          await device.reread();
        }""",
        one.device,
    )
    other.record("another")

    refused = third.takes_in(other.file())

    assert refused["title"] == "Two phones have used one identity"
    assert f"Entry 1 of phone {one.device}" in refused["sentence"]
    assert third.names() == [(one.device, 1)]


def test_a_paired_phone_takes_the_file_in_and_sends_all_of_it(take_phone, make_phone, app_server):
    old = take_phone()
    old.record("one", "two")
    old.record_photo(picture())
    paired = make_phone()
    paired.record("own")
    paired.sync()

    taken = paired.page.evaluate(
        """async (text) => {
          const { takeIn } = await import('/app/parts.js');
          return takeIn(store, new File([text], 'swaptrail.txt'));
        }""",
        old.file(),
    )

    assert taken == {"entries": 4, "photos": 1, "known": 0, "cutOff": None}
    paired.sync()
    rows = app_server.rows("SELECT device, seq FROM events ORDER BY n")
    assert rows == [(paired.device, 1)]  # nothing proves whose the others are, so a person is asked
    paired.page.evaluate(
        """async () => {
          const { brought } = await sync.api.get('/api/brought');
          for (const { device, by } of brought) await sync.api.post(`/api/brought/${device}/accept`, { by });
        }"""
    )
    paired.sync()
    rows = app_server.rows("SELECT device, seq FROM events ORDER BY n")
    assert rows == [(paired.device, 1), *old.names()]
    assert app_server.rows("SELECT count(*) FROM photos") == [(1,)]
    # The picture is asked about before it is sent, and the browser tells that it is not there yet.
    told = "console error: Failed to load resource: the server responded with a status of 404 (NOT FOUND)"
    assert set(paired.complaints.heard) == {told}


def test_a_phone_that_went_out_in_the_middle_of_taking_in_begins_again(take_phone, alone_app):
    old, new = take_phone(), take_phone()
    for size in ((64, 48), (80, 60)):
        old.record_photo(noise(size))
    text = old.file()
    new.record("own")
    before = new.names()
    new.page.evaluate(
        """(text) => {
          const write = store.write.bind(store);
          let pictures = 0;
          store.write = (tables, work) => {
            if (!tables.includes('photo_bytes') || ++pictures !== 2) return write(tables, work);
            window.stuck = true;
            return new Promise(() => undefined);
          };
          takeIn(text);
        }""",
        text,
    )
    wait_until(new.page, "window.stuck === true")
    new.page.close()

    again = AlonePhone(new.page.context, alone_app)

    assert (again.names(), len(again.pictures())) == (before, 1)
    assert again.takes_in(text) == {"entries": 4, "photos": 1, "known": 0, "cutOff": None}
    assert len(again.pictures()) == 2
    assert again.complaints.heard == []


def parts_of(phone):
    return phone.page.evaluate("async () => (await records()).map(({ event }) => event.data.part)")


def test_the_file_holds_what_came_from_a_server_that_once_stood_there_too(take_phone):
    phone = take_phone()
    phone.record("one", "two")
    phone.page.evaluate(
        """() => store.write(['events'], async (tx) => {
          const events = tx.objectStore('events');
          const { unsent, ...first } = await events.get([device.id, 1]);
          await events.put({ ...first, n: 1 });
        })"""
    )

    other = take_phone()

    assert other.takes_in(phone.file())["entries"] == 2


BAD = {
    "empty": (lambda text: "", "This file was not made by this app"),
    "a letter": (lambda text: "Dear all,\nsee you on Monday.\n", "This file was not made by this app"),
    "newer": (
        lambda text: text.replace('"v":2}', '"v":3}', 1),
        "This file is from a newer version",
    ),
    "an entry changed": (lambda text: text.replace('"part":"two"', '"part":"tow"'), "This file was altered"),
    "an entry gone": (
        lambda text: "".join(line for n, line in enumerate(text.splitlines(True)) if n != 1),
        "This file was altered",
    ),
    "the file twice": (lambda text: text + text, "These are two files in one"),
    "a word behind it": (lambda text: text + "Sent from a phone\n", "This file was altered"),
}


def test_a_bad_file_is_named_and_leaves_the_phone_as_it_was(take_phone):
    old, new = take_phone(), take_phone()
    old.record("one", "two", "three")
    old.record_photo(picture())
    new.record("own")
    before = new.names(), new.pictures()
    text = old.file()
    for kind, (spoil, title) in BAD.items():
        spoiled = spoil(text)
        assert spoiled != text

        refused = new.takes_in(spoiled)

        assert (kind, refused["title"]) == (kind, title)
        assert ("take it in again" if kind == "newer" else "Nothing was taken in.") in refused["sentence"]
        assert (new.names(), new.pictures()) == before
    assert new.takes_in(text)["entries"] == 5


FORGED = """async (at) => {
  const { chain, appended } = await import('/app/parts.js');
  const head = await store.getMeta('head');
  const drafts = [stock('x')];
  const entries = await chain(drafts, head, 'Mallory', at, false);
  await appended(store, { at, head, entries }, drafts, { unchecked: false, actor: 'Mallory' });
}"""


def test_what_no_phone_could_show_is_refused_by_its_entry_as_a_server_refuses_it(take_phone):
    old, new = take_phone(), take_phone()
    old.record("one")
    old.page.evaluate(FORGED, 9_000_000_000_000_000)

    refused = new.takes_in(old.file())

    assert refused["title"] == "This file holds what no phone can show"
    assert f"Entry 2 of phone {old.device} – event.at:" in refused["sentence"]
    assert new.names() == []


def test_a_file_that_was_cut_off_gives_what_is_there_and_the_rest_comes_later(take_phone):
    old, new = take_phone(), take_phone()
    old.record("one", "two")
    old.record_photo(picture())
    text = old.file()
    lines = text.splitlines(True)

    taken = new.takes_in("".join(lines[:3]) + lines[3][:50])

    assert taken == {"entries": 2, "photos": 0, "known": 0, "cutOff": {"entries": 2, "photos": 1}}
    # Half a file is no file that the phone could be set up from again.
    assert new.standing()["last"] is None
    assert new.takes_in(text) == {"entries": 2, "photos": 1, "known": 2, "cutOff": None}
    assert new.state() == old.state()


def test_what_a_paired_phone_had_not_sent_is_refused_where_its_beginning_is_missing(take_phone):
    old, new = take_phone(), take_phone()
    old.record("one", "two", "three", "four")
    entries = old.page.evaluate("async () => (await records()).map(({ event, hash }) => ({ event, hash }))")

    refused = new.takes_in(unsent_text(entries[2:], device=old.device))

    assert refused["title"] == "This file begins in the middle"
    assert f"Entries 1 to 2 of phone {old.device}" in refused["sentence"]
    assert new.names() == []
    # One that was never sent has its beginning.
    assert new.takes_in(unsent_text(entries, device=old.device))["entries"] == 4


def test_a_damaged_picture_stays_out_of_the_file_and_the_rest_can_be_taken_in(take_phone):
    old, new = take_phone(), take_phone()
    old.record_photo(picture())
    old.page.evaluate(
        """() => store.write(['photo_bytes'], async (tx) => {
          const bytes = tx.objectStore('photo_bytes');
          const [key] = await bytes.getAllKeys();
          const changed = new Uint8Array(await bytes.get(key));
          changed[100] ^= 1;
          await bytes.put(changed.buffer, key);
        })"""
    )

    made = old.page.evaluate(
        "async () => { const { damaged, content } = await wholeFile(store); return { damaged, content }; }"
    )

    assert made == {"damaged": 1, "content": {"entries": 2, "photos": 0}}
    assert new.takes_in(old.file()) == {"entries": 2, "photos": 0, "known": 0, "cutOff": None}


def test_what_is_in_no_file_is_counted_from_the_last_one_that_left_the_phone(take_phone):
    phone = take_phone()
    assert phone.standing() == {
        "counted": True,
        "entries": 0,
        "photos": 0,
        "since": None,
        "held": {"entries": 0, "photos": 0},
        "last": None,
    }
    phone.record("one", "two")
    phone.record_photo(picture())
    first = phone.standing()
    assert (first["entries"], first["photos"], first["held"]) == (4, 1, {"entries": 4, "photos": 1})
    assert first["since"] > 0

    phone.saves()
    saved = phone.standing()
    assert (saved["entries"], saved["photos"], saved["since"]) == (0, 0, None)
    assert saved["last"]["how"] == "shared"

    phone.record("three")
    later = phone.standing()
    assert (later["entries"], later["photos"]) == (1, 0)
    assert phone.standing()["since"] == later["since"]


def test_what_was_recorded_while_the_file_was_made_is_not_taken_for_saved(take_phone):
    phone = take_phone()
    phone.record("one")
    phone.page.evaluate("async () => { window.made = await wholeFile(store); }")
    phone.record("two")

    phone.page.evaluate(
        "saved.note({ name: 'x', at: Date.now(), how: 'shared', upTo: made.upTo, ...made.held })"
    )

    assert phone.standing()["entries"] == 1


def test_an_empty_phone_that_was_set_up_from_a_file_has_that_file(take_phone):
    old, new, mixed = take_phone(), take_phone(), take_phone()
    old.record("one", "two")
    text = old.file()

    new.takes_in(text)
    mixed.record("own")
    mixed.takes_in(text)

    assert (new.standing()["entries"], new.standing()["last"]["how"]) == (0, "taken in")
    assert (mixed.standing()["entries"], mixed.standing()["last"]) == (3, None)


def test_a_full_phone_takes_in_nothing_and_loses_nothing(take_phone, make_profile, alone_app):
    old = take_phone()
    old.record("one")
    for size in ((640, 480), (800, 600), (1024, 768)):
        old.record_photo(noise(size))
    text = old.file()
    assert len(text) > 1_200_000
    context = make_profile("full")
    # From before the first use on: a browser goes on for half a minute with the room that it once found.
    grant = quota(context, alone_app.base)
    grant(700_000)
    full = AlonePhone(context, alone_app)
    full.record("own")
    before = full.names(), full.pictures(), full.state()

    refused = full.takes_in(text)

    assert refused.get("name") == "QuotaExceededError", refused
    assert (full.names(), full.pictures(), full.state()) == before
    grant(1_000_000_000)
    assert full.takes_in(text)["photos"] == 3
    assert full.complaints.heard == []


def noise(size):
    """Return a picture that does not shrink: its bytes are needed to fill a phone."""
    dice = random.Random(size[0])
    return Image.frombytes("RGB", size, dice.randbytes(size[0] * size[1] * 3))


def test_pictures_go_into_the_file_one_by_one(take_phone):
    phone = take_phone()
    for size in ((64, 48), (80, 60), (96, 72)):
        phone.record_photo(noise(size))

    most = phone.page.evaluate(
        """async () => {
          const read = store.photoBytes.bind(store);
          let now = 0, most = 0;
          store.photoBytes = async (key) => {
            now += 1;
            most = Math.max(most, now);
            try { return await read(key); } finally { now -= 1; }
          };
          const steps = [];
          await wholeFile(store, (done, all) => steps.push([done, all]));
          return { most, steps };
        }"""
    )

    assert most == {"most": 1, "steps": [[1, 3], [2, 3], [3, 3]]}
