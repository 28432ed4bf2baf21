"""A phone that holds weeks of work unsent: entries as a workshop makes them, and pictures of real size."""

import hashlib
import json
import random

from PIL import Image

from tests.bench.workload import Workload
from tests.static.phone_parts import open_bare
from tests.static.phone_parts import start_parts
from tests.static.pictures import encoded

PICTURE_SIZE = (800, 600)
_ENTRIES, _PICTURES, _PICTURE = "/backlog/entries", "/backlog/pictures", "/backlog/picture/"

# Straight into the store: to record each through the core would take longer than to send it.
SEED = """async ([entries, pictures, picture]) => {
  const all = await (await fetch(entries)).json();
  await store.write(['meta', 'events'], async (tx) => {
    const events = tx.objectStore('events');
    const writes = all.map(({ event, hash }, index) => {
      const { device, seq, job } = event;
      return events.add({ device, seq, hash, event, own: 1, unsent: index + 1, ...(job ? { job } : {}) });
    });
    const last = all[all.length - 1];
    const head = { device: device.id, seq: last.event.seq, hash: last.hash, nextUnsent: all.length + 1 };
    writes.push(tx.objectStore('meta').put(head, 'head'));
    await Promise.all(writes);
  });
  for (const { sha256, at } of await (await fetch(pictures)).json()) {
    const bytes = await (await fetch(picture + sha256)).arrayBuffer();
    await store.write(['photos', 'photo_bytes'], async (tx) => {
      const facts = { sha256, mime: 'image/jpeg', size: bytes.byteLength, at, unsent: 1 };
      await Promise.all([
        tx.objectStore('photos').add(facts),
        tx.objectStore('photo_bytes').add(bytes, sha256),
      ]);
    });
  }
}"""


class PicturedWorkload(Workload):
    """A log whose pictures exist; where its jobs have more of them, several entries name the same."""

    def __init__(self, device: str, pictures: dict[str, bytes]):
        """Begins an empty log that shows `pictures`, by their hash."""
        super().__init__(device)
        self._pictures = list(pictures.items())
        self._shown = 0

    def _photo(self, place):
        digest, content = self._pictures[self._shown % len(self._pictures)]
        self._shown += 1
        width, height = PICTURE_SIZE
        size = {"mime": "image/jpeg", "bytes": len(content), "width": width, "height": height}
        return {"sha256": digest, "shows": "position", "position": place, "unit": "", **size}


def noise_pictures(count: int) -> dict[str, bytes]:
    """Return so many different pictures by their hash; noise, so that they take the room of real ones."""
    dice = random.Random(1)
    width, height = PICTURE_SIZE
    made = (encoded(Image.frombytes("L", PICTURE_SIZE, dice.randbytes(width * height))) for _ in range(count))
    return {hashlib.sha256(content).hexdigest(): content for content in made}


def put_backlog(context, server, entries: int, pictures: int) -> str:
    """Pair a phone and leave a backlog on it, unsent; returns its device id."""
    contents = noise_pictures(pictures)
    page = open_bare(context, server.base)
    device = start_parts(page)
    page.evaluate("(token) => sync.pair(token, 'Mara')", server.token())
    made = PicturedWorkload(device, contents).entries(entries)
    saved = [{"sha256": digest, "at": made[0]["event"]["at"]} for digest in contents]
    kept = {
        _ENTRIES: json.dumps(made).encode(),
        _PICTURES: json.dumps(saved).encode(),
        **{_PICTURE + digest: content for digest, content in contents.items()},
    }

    def hand_over(environ, app):
        content = kept.get(environ["PATH_INFO"])
        return None if content is None else ("200 OK", "application/octet-stream", content)

    server.fault = hand_over
    page.evaluate(SEED, [_ENTRIES, _PICTURES, _PICTURE])
    server.fault = None
    page.close()
    return device
