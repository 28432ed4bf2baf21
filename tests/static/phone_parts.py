"""The parts of the phone app put together in a page without its screens, as main.js does it."""

PARTS = """async ({ sync = false, timeoutSeconds = 30 } = {}) => {
  const at = (name) => import(`/app/${name}.js`);
  const { openStore } = await at('store');
  const { openDevice } = await at('device');
  const { Core } = await at('core-client');
  const { openLog } = await at('log');
  const { Photos } = await at('photos');
  const { Sync } = await at('sync');
  window.store = await openStore();
  window.device = await openDevice(store);
  window.core = await Core.start({ timeoutSeconds });
  window.log = await openLog({ store, core, device });
  window.sync = new Sync({ store, log, device, build: () => 'tried', onServerBuild: () => undefined });
  window.photos = new Photos(store, window.sync.api);
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


def start_parts(page, **options) -> str:
    """Put the parts on `window` of a bare page; returns the phone's device id."""
    return page.evaluate(PARTS, options)


def records(page) -> list[dict]:
    """Return everything in the phone's log, in order."""
    return page.evaluate("records()")
