"""A phone whose log already holds a job at some step, so that a test begins at the screen it is about."""

import json

from server.core.host import Host
from tests.core.driver import JOB
from tests.core.driver import Driver
from tests.static.conftest import open_bare
from tests.static.phone_parts import start_parts

RECORD = """async (drafts) => {
  const result = await log.record(drafts);
  await device.setActor('Mara');
  return result.refusal ? result.refusal.sentence : '';
}"""


def job_driver() -> Driver:
    """Return a driver on a core of its own."""
    host = Host()

    def core(op, **arguments):
        answer = json.loads(host.call(json.dumps({"op": op, **arguments})))
        assert answer["ok"], answer
        return answer["value"]

    return Driver(core)


def put_on_phone(context, base: str, driver: Driver) -> None:
    """Record what the driver did as facts of this phone."""
    page = open_bare(context, base)
    start_parts(page)
    drafts = [{"kind": e["kind"], "data": e["data"], "job": e["job"]} for e in driver.events]
    refused = page.evaluate(RECORD, drafts)
    assert refused == "", refused
    page.close()


def open_job(context, base: str, driver: Driver, complaints=None, part: str = ""):
    """Open the app at the driver's job, recorded on this phone before."""
    put_on_phone(context, base, driver)
    page = context.new_page()
    if complaints:
        complaints.listen(page)
    page.goto(f"{base}/#/job/{JOB}{part}")
    page.locator(".screen").wait_for()
    return page


def label(base: str, code: str) -> str:
    """Return the text in the QR code of one of this installation's labels."""
    return f"{base}/U/{code}".upper()
