"""The phone's log: chained without a gap, saved whole or not at all, the same in every tab."""

import pytest

from server.core.log import chain
from server.core.log import envelope
from tests.browser_support import Complaints
from tests.browser_support import wait_until
from tests.static.app_server import core_with
from tests.static.phone_parts import open_bare
from tests.static.phone_parts import records
from tests.static.phone_parts import start_parts

PHOTO = """async (size) => {
  const { sha256Hex } = await import('/app/parts.js');
  const bytes = crypto.getRandomValues(new Uint8Array(Math.min(size, 65536)));
  const all = new Uint8Array(size);
  for (let at = 0; at < size; at += bytes.length) all.set(bytes.subarray(0, size - at), at);
  window.photo = { bytes: all.buffer, mime: 'image/jpeg', sha256: await sha256Hex(all), width: 1, height: 1 };
}"""

MANY = """(count) => {
  window.done = (async () => {
    for (let i = 0; i < count; i += 1) {
      const result = await log.record([stock(`${count}-${i}`)]);
      if (!result.events) throw new Error(JSON.stringify(result));
    }
  })();
}"""


def quota(context, origin):
    """Return a setter of the bytes that the browser grants; it counts from before the first use on."""
    session = context.new_cdp_session(context.pages[0])

    def grant(size):
        session.send("Storage.overrideQuotaForOrigin", {"origin": origin, "quotaSize": size})

    return grant


def is_whole(found) -> bool:
    """Return whether the records of one device chain without a fault and hash as the server does."""
    events = [record["event"] for record in found]
    hashes = [record["hash"] for record in found]
    return chain.first_fault(events) is None and hashes == [envelope.hash_of(e) for e in events]


def test_facts_recorded_together_are_chained_and_folded(bare_page):
    device = start_parts(bare_page)
    bare_page.evaluate("device.setActor('  Zoë 😀  ')")

    bare_page.evaluate("log.record([stock('a'), stock('b')])")
    bare_page.evaluate("log.record([stock('c')])")

    found = records(bare_page)
    assert is_whole(found)
    assert [record["event"]["data"]["part"] for record in found] == ["a", "b", "c"]
    assert {(record["device"], record["event"]["actor"]) for record in found} == {(device, "Zoë 😀")}
    assert len(bare_page.evaluate("core.call('state')")["units"]) == 3


def test_a_refusal_carries_the_cores_sentence_and_saves_nothing(bare_page):
    start_parts(bare_page)

    result = bare_page.evaluate(
        """log.record([stock('a'), { kind: 'unit_fitted', job: 'j0123456789ab',
            data: { unit: 'u1', position: 'p', how: 'tapped', override: '' } }])"""
    )

    assert result["refusal"]["sentence"]
    assert result["refusal"]["draft"] == 1
    assert records(bare_page) == []


def test_where_nothing_is_to_be_recorded_nothing_fails(bare_page):
    start_parts(bare_page)

    answer = bare_page.evaluate("log.record([])")

    assert answer == {"events": [], "conflicts": [], "unchecked": False}
    assert bare_page.evaluate("log.unsaved.value") is None


def test_a_reload_folds_the_log_again(bare_page):
    start_parts(bare_page)
    bare_page.evaluate("log.record([stock('a')])")
    before = bare_page.evaluate("core.call('state')")

    bare_page.reload()
    start_parts(bare_page)
    bare_page.evaluate("log.record([stock('b')])")

    assert is_whole(records(bare_page))
    after = bare_page.evaluate("core.call('state')")
    assert len(before["units"]) == 1
    assert len(after["units"]) == 2


def test_without_a_core_facts_are_saved_unchecked(make_context, shared_app):
    context = make_context()
    context.add_init_script("delete window.WebAssembly")
    page = open_bare(context, shared_app.base)
    start_parts(page)

    result = page.evaluate("log.record([stock('a')])")

    assert result["unchecked"] is True
    found = records(page)
    assert is_whole(found)
    assert [record["unchecked"] for record in found] == [1]


def test_a_core_that_hangs_does_not_lose_a_fact(bare_page, shared_app):
    hanging = (
        "import json\nfrom .log import canon\nclass Host:\n"
        + """
    def call(self, text):
        asked = json.loads(text)
        while asked["op"] == "check_and_add":
            pass
        value = {"count": 0, "conflicts": [], "text": canon.dumps(asked.get("value"))}
        return canon.dumps({"ok": True, "value": value})
"""
    )
    shared_app.fault = core_with(hanging)
    bare_page.route("**/app/parts.js", hurried)
    start_parts(bare_page)

    result = bare_page.evaluate("log.record([stock('a')])")

    assert result["unchecked"] is True
    assert [record["unchecked"] for record in records(bare_page)] == [1]
    assert bare_page.evaluate("core.restarts") == 2


def hurried(route):
    """Hand out the log with less patience, so that the test need not wait."""
    response = route.fetch()
    route.fulfill(response=response, body=response.text().replace("CHECK_SECONDS = 10", "CHECK_SECONDS = 1"))


@pytest.mark.parametrize(
    "script",
    [
        pytest.param("", id="with Web Locks"),
        pytest.param(
            "Object.defineProperty(navigator, 'locks', { value: undefined })", id="without Web Locks"
        ),
    ],
)
def test_two_tabs_append_without_gap_or_double(make_context, shared_app, script):
    context = make_context()
    context.add_init_script(script)
    complaints = Complaints(shared_app.base)
    tabs = [open_bare(context, shared_app.base, complaints) for _ in range(2)]
    for tab in tabs:
        start_parts(tab)

    for tab, count in zip(tabs, (110, 120), strict=True):
        tab.evaluate(MANY, count)
    for tab in tabs:
        tab.evaluate("done")

    found = records(tabs[0])
    assert len(found) == 230
    assert is_whole(found)
    assert [record["unsent"] for record in found] == list(range(1, 231))
    for tab in tabs:
        tab.evaluate("log.catchUp()")
    states = [tab.evaluate("core.call('state')") for tab in tabs]
    assert len(states[0]["units"]) == 230
    assert states[0] == states[1]
    assert complaints.heard == []


def test_a_lost_connection_is_opened_again(bare_page):
    start_parts(bare_page)

    # what Safari does after a lock: the handle is there, and every use of it throws
    bare_page.evaluate("store.withDb(async (db) => db.close())")
    bare_page.evaluate("log.record([stock('a')])")

    assert len(records(bare_page)) == 1
    assert bare_page.evaluate("store.trouble.value.state") == "none"


def test_a_connection_that_stays_lost_keeps_what_was_entered(bare_page):
    start_parts(bare_page)
    bare_page.evaluate(
        """() => {
          window.broken = IDBDatabase.prototype.transaction;
          IDBDatabase.prototype.transaction = function (tables, mode, options) {
            if (mode === 'readwrite') throw new DOMException('lost', 'UnknownError');
            return broken.call(this, tables, mode, options);
          };
        }"""
    )

    problem = bare_page.evaluate("say(() => log.record([stock('a')]))")

    assert problem["reason"] == "storage"
    assert bare_page.evaluate("log.unsaved.value.entered.drafts[0].data.part") == "a"
    assert bare_page.evaluate("store.trouble.value.state") == "reload"
    bare_page.evaluate("() => { IDBDatabase.prototype.transaction = broken; }")
    bare_page.evaluate("log.retry()")
    assert is_whole(records(bare_page))
    assert bare_page.evaluate("log.unsaved.value") is None


def test_an_event_and_its_photo_go_into_one_strict_transaction(bare_page):
    start_parts(bare_page)
    bare_page.evaluate(PHOTO, 1000)
    bare_page.evaluate(
        """() => {
          window.writes = [];
          const transaction = IDBDatabase.prototype.transaction;
          IDBDatabase.prototype.transaction = function (tables, mode, options) {
            const made = transaction.call(this, tables, mode, options);
            if (mode === 'readwrite') writes.push([[...made.objectStoreNames], made.durability]);
            return made;
          };
        }"""
    )

    bare_page.evaluate("log.record([stock('a')], { photo })")

    assert bare_page.evaluate("writes") == [[["events", "meta", "photo_bytes", "photos"], "strict"]]
    stored = bare_page.evaluate(
        """async () => {
          const { size, mime, unsent } = await store.photo(photo.sha256);
          const bytes = await store.photoBytes(photo.sha256);
          return [Object.prototype.toString.call(bytes), bytes.byteLength, size, mime, unsent];
        }"""
    )
    assert stored == ["[object ArrayBuffer]", 1000, 1000, "image/jpeg", 1]


def test_an_older_tab_lets_a_newer_version_open_and_says_reload(make_context, shared_app):
    context = make_context()
    old, new = (open_bare(context, shared_app.base) for _ in range(2))
    start_parts(old)

    new.evaluate(
        """new Promise((resolve, reject) => {
          const request = indexedDB.open('swaptrail', 1000);
          request.onsuccess = () => { request.result.close(); resolve(); };
          request.onerror = () => reject(request.error);
        })"""
    )

    wait_until(old, "store.trouble.value.state === 'reload'")


def test_a_full_phone_says_so_and_keeps_what_was_entered(make_profile, shared_app):
    context = make_profile(service_workers="block")
    set_quota = quota(context, shared_app.base)
    set_quota(1_500_000)
    page = open_bare(context, shared_app.base)
    start_parts(page)
    page.evaluate(PHOTO, 3_000_000)

    problem = page.evaluate("say(() => log.record([stock('a')], { photo }))")

    assert problem["title"] == "Not saved: this phone is full"
    assert problem["sentence"].startswith("What you entered is still here.")
    assert page.evaluate("log.unsaved.value.entered.photo.bytes.byteLength") == 3_000_000
    assert records(page) == []
    assert page.evaluate("store.photoBytes(photo.sha256)") is None
    assert len(page.evaluate("core.call('state')")["units"]) == 0

    # an event alone is small: the reserve that was given back takes it
    page.evaluate("log.record([stock('b')])")
    set_quota(20_000_000)
    page.evaluate("log.retry()")

    found = records(page)
    assert is_whole(found)
    assert [record["event"]["data"]["part"] for record in found] == ["b", "a"]
    assert page.evaluate("store.photoBytes(photo.sha256).then((b) => b.byteLength)") == 3_000_000


def test_a_full_phone_drops_photos_that_the_server_has_and_no_others(make_profile, shared_app):
    context = make_profile(service_workers="block")
    quota(context, shared_app.base)(2_700_000)
    page = open_bare(context, shared_app.base)
    start_parts(page)
    for size, name in ((1_000_000, "confirmed"), (900_000, "waiting")):
        page.evaluate(PHOTO, size)
        page.evaluate("log.record([stock('a')], { photo })")
        page.evaluate(f"window.{name} = photo.sha256")
    page.evaluate(
        """store.write(['photos'], async (tx) => {
          const { unsent, ...rest } = await tx.objectStore('photos').get(confirmed);
          await tx.objectStore('photos').put(rest);
        })"""
    )
    page.evaluate(PHOTO, 800_000)
    page.evaluate("log.record([stock('b')], { photo })")

    kept = page.evaluate(
        "Promise.all([confirmed, waiting, photo.sha256].map((sha) => store.photoBytes(sha)))"
    )
    assert [photo is not None for photo in kept] == [False, True, True]


HALF = """async () => {
  const note = `wet ${String.fromCharCode(0xd83d)}`;
  const draft = stock('a');
  draft.data.serial = note;
  const { refusal } = await log.record([draft]);
  return refusal;
}"""


def test_half_a_character_is_refused_by_its_field_and_nothing_is_lost(bare_page):
    start_parts(bare_page)
    refusal = bare_page.evaluate(HALF)
    assert refusal["fault"]["field"] == "data.serial"
    assert "whole Unicode characters" in refusal["sentence"]
    assert records(bare_page) == []
    bare_page.evaluate("log.record([stock('b')])")
    assert is_whole(records(bare_page))
    bare_page.evaluate("device.setActor('Zoë ' + String.fromCharCode(0xd83d))")
    bare_page.evaluate("log.record([stock('c')])")
    assert records(bare_page)[-1]["event"]["actor"] == "Zoë"
