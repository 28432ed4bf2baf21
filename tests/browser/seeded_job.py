"""A phone whose log already holds a job at some step, so that a test begins at the screen it is about."""

import json

from server.core.host import Host
from tests.core.driver import JOB
from tests.core.driver import Driver
from tests.static.app_server import BARE_PAGE

# For a phone of which no test asks what the service worker does: it would fetch all of the app for each.
NO_WORKER = "delete Navigator.prototype.serviceWorker;"

# Chained and saved by the app's own log, but not folded: the driver's core has judged each fact before.
RECORD = """async (drafts) => {
  const { openStore, openDevice, chain, appended } = await import('/app/parts.js');
  const store = await openStore();
  const device = await openDevice(store);
  const at = Date.now();
  const head = await store.getMeta('head');
  const entries = await chain(drafts, head, device.actor, at, false);
  await appended(store, { at, head, entries }, drafts, { unchecked: false, actor: device.actor });
  await device.setActor('Mara');
}"""


def job_driver() -> Driver:
    """Return a driver on a core of its own."""
    host = Host()

    def core(op, **arguments):
        answer = json.loads(host.call(json.dumps({"op": op, **arguments})))
        assert answer["ok"], answer
        return answer["value"]

    return Driver(core)


def put_on_phone(page, base: str, driver: Driver) -> None:
    """Record what the driver did as facts of this phone, on a page that shows nothing of the app then."""
    page.goto(base + BARE_PAGE)
    page.evaluate(RECORD, [{"kind": e["kind"], "data": e["data"], "job": e["job"]} for e in driver.events])


def open_job(context, base: str, driver: Driver, complaints=None, part: str = ""):
    """Open the app at the driver's job, recorded on this phone before; without a service worker."""
    context.add_init_script(NO_WORKER)
    page = context.new_page()
    put_on_phone(page, base, driver)
    if complaints:
        complaints.listen(page)
    page.goto(f"{base}/#/job/{JOB}{part}")
    page.locator(".screen").wait_for()
    return page


def label(base: str, code: str) -> str:
    """Return the text in the QR code of one of this installation's labels."""
    return f"{base}/U/{code}".upper()
