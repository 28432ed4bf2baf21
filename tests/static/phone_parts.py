"""The parts of the phone app put together in a page without its screens, as main.js does it."""

import json

from server.core.host import Host
from tests.browser_support import Complaints
from tests.static.app_server import BARE_PAGE
from tests.static.pictures import as_text
from tests.static.pictures import encoded

PARTS = """async ({ sync = false, timeoutSeconds = 30 } = {}) => {
  const { openStore, openDevice, Core, openLog, Photos, SmallPictures, Sync, startWords } =
    await import('/app/parts.js');
  await startWords();
  window.store = await openStore();
  window.device = await openDevice(store);
  window.core = await Core.start({ timeoutSeconds });
  window.log = await openLog({ store, core, device });
  window.sync = new Sync({ store, log, device, build: () => 'tried', onServerBuild: () => undefined });
  window.small = new SmallPictures(store, window.sync.api);
  window.photos = new Photos(store, window.sync.api, window.small);
  window.records = () => log.ordered();
  window.stock = (note) => ({
    kind: 'unit_added',
    data: { unit: device.newId('u'), part: note, serial: '', code: '', how: 'tapped', place: 'stock' },
  });
  window.say = async (work) => {
    try { return await work(); } catch (error) {
      return { name: error.name, title: error.title, sentence: error.sentence, reason: error.reason };
    }
  };
  if (sync) window.sync.start();
  return device.id;
}"""


def open_bare(context, base, complaints=None):
    """Open a page of the app with its headers and import map, but without its start."""
    page = context.new_page()
    if complaints:
        complaints.listen(page)
    page.goto(base + BARE_PAGE)
    page.evaluate("document.querySelector('#app').replaceChildren()")
    return page


def start_parts(page, **options) -> str:
    """Put the parts on `window` of a bare page; returns the phone's device id."""
    return page.evaluate(PARTS, options)


def value_of(page, expression):
    """Return what an expression comes to, a value of JSON.

    As one text: value by value a driver of browsers takes long over a log or a state.
    """
    return json.loads(page.evaluate(f"async () => JSON.stringify(await {expression})"))


def records(page) -> list[dict]:
    """Return everything in the phone's log, in order."""
    return value_of(page, "records()")


class Recording:
    """What a page with the parts on it records; `page` is given by whoever is one."""

    def record(self, *notes):
        for note in notes:
            self.page.evaluate("(note) => log.record([stock(note)])", note)

    def record_photo(self, picture):
        self.page.evaluate(
            """async (text) => {
              const bytes = Uint8Array.from(atob(text), (sign) => sign.charCodeAt(0));
              window.photo = await photos.prepare(new Blob([bytes]));
              const [{ id: layout, positions }] = await core.call('layouts');
              const job = device.newId('j');
              const vehicle = { id: device.newId('v'), name: 'blue estate', vin: '' };
              const { sha256, mime, width, height } = photo;
              const result = await log.record([
                { job, kind: 'job_opened', data: { vehicle, complaint: '', layout, part: '', positions } },
                { job, kind: 'photo_taken', data: { sha256, mime, bytes: photo.bytes.byteLength, width,
                  height, shows: 'work', position: '', unit: '' } },
              ], { photo });
              if (result.refusal) throw new Error(result.refusal.sentence);
            }""",
            as_text(encoded(picture)),
        )


class Phone(Recording):
    """One phone: a browser context with the parts of the app, paired on request."""

    def __init__(self, context, server, *, paired=True):
        self.context = context
        self.server = server
        self.complaints = Complaints(server.base)
        self.page = open_bare(context, server.base, self.complaints)
        self.device = start_parts(self.page)
        if paired:
            self.pair()

    def pair(self):
        self.page.evaluate("(token) => sync.pair(token, 'Zoë')", self.server.token())

    def sync(self):
        self.page.evaluate("sync.now()")
        return self.status()

    def status(self):
        return self.page.evaluate("sync.status.value")

    def notes(self):
        return [record["event"]["data"].get("part") for record in records(self.page)]

    def state(self):
        return value_of(self.page, "core.call('state')")

    def reload(self):
        self.page.reload()
        self.device = start_parts(self.page)


def on_server(server):
    """Return the notes that the server holds, in its order."""
    rows = server.rows("SELECT json_extract(body, '$.data.part') FROM events ORDER BY n")
    return [note for (note,) in rows]


def state_on_server(server):
    """Return the state that the server's log folds to."""
    rows = server.rows("SELECT body FROM events ORDER BY n")
    host = Host()
    events = [{"event": json.loads(body)} for (body,) in rows]
    host.call(json.dumps({"op": "reset", "events": events}))
    return json.loads(host.call('{"op": "state"}'))["value"]
