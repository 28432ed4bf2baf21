"""A phone that several people share: who works with it is said on it, and stands in the history."""

from server.log import events
from tests.browser.seeded_job import job_driver
from tests.browser.seeded_job import put_on_phone
from tests.core.driver import JOB
from tests.server.phone import NOW
from tests.server.signed_phone import SignedPhone
from tests.static.app_server import AppServer

CLEANED = {"position": "rear-right-outer", "note": ""}
# As the app records, without a screen for it.
RECORD = """async (drafts) => {
  const { openStore, openDevice, chain, appended } = await import('/app/parts.js');
  const store = await openStore();
  const { actor } = await openDevice(store);
  const at = Date.now();
  const head = await store.getMeta('head');
  const entries = await chain(drafts, head, actor, at, false);
  await appended(store, { at, head, entries }, drafts, { unchecked: false, actor });
}"""


def own_name(page, base):
    page.goto(f"{base}/#/you")
    # The page of pairing asks for a name, too.
    page.locator(".screen-title", has_text="You and this phone").wait_for()
    return page.get_by_label("Your name")


def test_the_next_person_takes_the_phone_over_and_back_and_both_stand_in_the_history(
    tmp_path, screen_browser
):
    server = AppServer(tmp_path)
    context = screen_browser.new_context(viewport={"width": 390, "height": 844}, has_touch=True)
    try:
        page = context.new_page()
        put_on_phone(page, server.base, job_driver().begin())
        page.goto(server.link("bench"))
        page.get_by_label("Your name").fill("Ana")
        page.get_by_role("button", name="Pair this phone").click()
        page.locator(".pill", has_text="all sent").wait_for()

        own_name(page, server.base).fill("Bo")
        page.get_by_role("button", name="Use this name").click()
        page.get_by_role("button", name="Ana", exact=True).wait_for()
        page.evaluate(RECORD, [{"kind": "cleaned", "data": CLEANED, "job": JOB}])
        page.reload()
        page.goto(f"{server.base}/#/job/{JOB}/history")
        page.get_by_text("Bo, on the phone of Ana").first.wait_for()
        assert page.get_by_text("Nobody has said that Bo uses this phone.").count() == 0

        own_name(page, server.base)
        page.get_by_role("button", name="Ana", exact=True).click()
        page.get_by_role("button", name="Bo", exact=True).wait_for()
        assert own_name(page, server.base).input_value() == "Ana"
    finally:
        context.close()
        server.close()


def test_what_a_phone_may_not_record_and_a_name_that_nobody_gave_it_are_flagged(tmp_path, screen_browser):
    server = AppServer(tmp_path)
    context = screen_browser.new_context(viewport={"width": 320, "height": 700}, has_touch=True)
    try:
        page = context.new_page()
        put_on_phone(page, server.base, job_driver().begin())
        page.goto(server.link("bench"))
        page.get_by_label("Your name").fill("Ana")
        page.get_by_role("button", name="Pair this phone").click()
        page.locator(".pill", has_text="all sent").wait_for()
        with server.database() as db:
            jo = SignedPhone(server.app, "d00000000000000cc", base=server.base)
            jo.pair_by(server.link("counter"), "Jo")
            jo.actor = "Kim"
            events.receive(db, [jo.record("cleaned", CLEANED, JOB)], None, NOW)
        page.goto(f"{server.base}/#/you")
        page.get_by_role("button", name="Send now").click()
        page.goto(f"{server.base}/#/job/{JOB}/history")

        page.get_by_text("said by Kim on the phone of Jo").wait_for()
        page.get_by_text("Nobody has said that Kim uses this phone.").wait_for()
        page.get_by_text("A phone of the parts counter recorded this.").wait_for()
    finally:
        context.close()
        server.close()
