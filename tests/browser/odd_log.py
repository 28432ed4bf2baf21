"""Puts a log on a phone whatever its entries hold: no core is asked, as with what comes in by a sync."""

from tests.static.app_server import BARE_PAGE

_KEEP = """async (drafts) => {
  const { openStore, openDevice, chain, appended } = await import('/app/parts.js');
  const store = await openStore();
  const device = await openDevice(store);
  await device.setActor('Mara');
  for (const draft of drafts) {
    const head = await store.getMeta('head');
    const entries = await chain([draft], head, 'Mara', draft.at, false);
    await appended(store, { at: draft.at, head, entries }, [draft], { unchecked: false, actor: 'Mara' });
  }
}"""


def keep(phone, drafts: list[dict]) -> None:
    """Record drafts {"kind", "data", "job", "at"} as entries of this phone."""
    phone.lacks_pictures()
    phone.page.goto(phone.base + BARE_PAGE)
    phone.page.evaluate(_KEEP, drafts)
