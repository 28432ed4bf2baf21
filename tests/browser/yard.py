"""A phone that holds years of work: the log of `tests/many_jobs.py`, put into its storage."""

import time

from tests.many_jobs import Yard
from tests.static.app_server import BARE_PAGE

_OPEN = """async () => {
  const { openStore, openDevice } = await import('/app/parts.js');
  globalThis.store = await openStore();
  globalThis.device = await openDevice(store);
  await device.setActor('Mara');
  return device.id;
}"""
# Straight into the store: to record each through the core would take minutes.
_FILL = """async (all) => {
  await store.write(['meta', 'events'], async (tx) => {
    const events = tx.objectStore('events');
    const writes = all.map(({ event, hash }, index) => {
      const { device, seq, job } = event;
      return events.add({ device, seq, hash, event, own: 1, unsent: index + 1, job });
    });
    const last = all[all.length - 1];
    const head = { device: device.id, seq: last.event.seq, hash: last.hash, nextUnsent: all.length + 1 };
    writes.push(tx.objectStore('meta').put(head, 'head'));
    await Promise.all(writes);
  });
}"""


def put_yard(page, base: str, jobs: int) -> Yard:
    """Leave so many jobs on a phone and return what they are; the page shows nothing of the app then."""
    page.goto(base + BARE_PAGE)
    yard = Yard(page.evaluate(_OPEN), jobs, int(time.time() * 1000))
    page.evaluate(_FILL, yard.entries)
    return yard
