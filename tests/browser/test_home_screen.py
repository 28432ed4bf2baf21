"""The home screen: offered once there is a job to lose, shown for both families of phones, put off."""

import pytest

from tests.browser.seeded_job import job_driver
from tests.browser.seeded_job import put_on_phone
from tests.core.driver import JOB

# The forms of these lines are from memory; what counts in them is the name of the system.
IPHONE = (
    "Mozilla/5.0 (iPhone; CPU iPhone OS 18_5 like Mac OS X) AppleWebKit/605.1.15 Version/18.5 Mobile/15E148"
)
IPAD = "Mozilla/5.0 (Macintosh; Intel Mac OS X 10_15_7) AppleWebKit/605.1.15 Version/18.5"
ANDROID = "Mozilla/5.0 (Linux; Android 15; K) AppleWebKit/537.36 Chrome/140.0.0.0 Mobile Safari/537.36"
TITLE = "Put Swaptrail on the home screen"

INSTALLED = """(() => {
  const asked = matchMedia.bind(window);
  window.matchMedia = (query) => query === '(display-mode: standalone)' ? { matches: true } : asked(query);
})();"""
KEEPS_NOTHING = "navigator.storage.persist = async () => false;"
PROMPTS = """() => {
  const offer = new Event('beforeinstallprompt', { cancelable: true });
  offer.prompt = async () => { globalThis.prompted = true; };
  dispatchEvent(offer);
  return offer.defaultPrevented;
}"""
TOUCHES = "Object.defineProperty(navigator, 'maxTouchPoints', { value: 5 });"
LATER = """(days) => { const now = Date.now; Date.now = () => now() + days * 24 * 3600 * 1000; }"""
# Nothing more is written until it lets go.
HOLDS_THE_STORE = """() => new Promise((held) => {
  const opening = indexedDB.open('swaptrail');
  opening.onsuccess = () => {
    const meta = opening.result.transaction('meta', 'readwrite').objectStore('meta');
    const again = () => {
      held();
      if (globalThis.letsGo) opening.result.close();
      else meta.count().onsuccess = again;
    };
    meta.count().onsuccess = again;
  };
})"""
CLIPBOARD = """navigator.clipboard.writeText = async (text) => { globalThis.copied = text; };"""


def offer(page):
    """Return the offer on the list of jobs."""
    return page.get_by_role("heading", name=TITLE)


def waits_longer(phone, page, days):
    """Go on some days later."""
    phone.context.add_init_script(f"({LATER})({days});")
    page.reload()
    page.get_by_role("link", name="Blue estate").wait_for()


def test_nothing_is_said_before_the_first_job_and_no_alarm_after_it(take_screens):
    phone = take_screens()
    page = phone.show()
    page.get_by_text("No job yet").wait_for()
    assert offer(page).count() == 0
    assert page.get_by_text("home screen").count() == 0

    held = take_screens().holds(job_driver().open())
    page = held.show()
    offer(page).wait_for()
    assert page.locator(".panel-stop, .notice-fault").count() == 0


def test_the_job_that_was_just_opened_has_one_line_on_it_that_leads_to_the_way_and_back(take_screens):
    phone = take_screens(user_agent=ANDROID).holds(job_driver().open())
    page = phone.show(f"/#/job/{JOB}")
    page.get_by_role("link", name="Keep Swaptrail on the home screen").click()
    page.get_by_role("heading", name="On an Android phone").wait_for()
    phone.tap("Not now")
    page.get_by_role("heading", name="Before you start").or_(page.locator("[data-step]")).first.wait_for()
    assert page.url.endswith(f"#/job/{JOB}")
    assert page.get_by_role("link", name="Keep Swaptrail").count() == 0


def test_an_app_on_the_home_screen_offers_it_no_more(take_screens):
    phone = take_screens().holds(job_driver().open())
    phone.context.add_init_script(INSTALLED)
    page = phone.show()
    page.get_by_role("link", name="Blue estate").wait_for()
    assert offer(page).count() == 0


@pytest.mark.parametrize(
    ("family", "touches", "first"),
    [
        pytest.param(IPHONE, True, "On an iPhone", id="iPhone"),
        pytest.param(IPAD, True, "On an iPhone", id="iPad, which says Macintosh"),
        pytest.param(IPAD, False, "On an Android phone", id="Macintosh"),
        pytest.param(ANDROID, True, "On an Android phone", id="Android"),
    ],
)
def test_the_way_is_shown_for_both_families_the_phones_own_first(take_screens, family, touches, first):
    phone = take_screens(user_agent=family)
    if touches:
        phone.context.add_init_script(TOUCHES)
    page = phone.show("/#/you")
    page.get_by_role("link", name="How to put it on the home screen").click()
    page.get_by_role("heading", name=TITLE).wait_for()
    assert page.get_by_role("heading", level=2).all_inner_texts()[0] == first
    assert sorted(page.get_by_role("heading", level=2).all_inner_texts()) == [
        "On an Android phone",
        "On an iPhone",
    ]
    for words in ("Add to Home Screen in the list", "Add to Home screen, or Install app"):
        assert page.get_by_role("img", name=words).is_visible()


def test_where_the_browser_hands_over_its_prompt_one_button_does_it(take_screens):
    phone = take_screens(user_agent=ANDROID).holds(job_driver().open())
    page = phone.show()
    page.get_by_role("link", name="Show me how").wait_for()
    assert page.evaluate(PROMPTS), "the browser shows its own bar at its own moment"
    phone.tap("Put it there")
    assert page.evaluate("globalThis.prompted")


def test_once_it_was_put_there_the_page_offers_it_no_more(take_screens):
    phone = take_screens(user_agent=ANDROID).holds(job_driver().open())
    page = phone.show()
    offer(page).wait_for()
    page.evaluate(HOLDS_THE_STORE)
    page.evaluate("dispatchEvent(new Event('appinstalled'))")
    assert offer(page).is_visible(), "it stands until that is written"
    page.evaluate("globalThis.letsGo = true")
    offer(page).wait_for(state="detached")
    waits_longer(phone, page, 8)
    page.locator("#app:not([inert])").wait_for()
    assert offer(page).count() == 0


def test_a_no_to_the_browser_is_a_not_now(take_screens):
    phone = take_screens(user_agent=ANDROID).holds(job_driver().open())
    page = phone.show()
    page.get_by_role("link", name="Show me how").wait_for()
    page.evaluate(PROMPTS.replace("globalThis.prompted = true;", "return { outcome: 'dismissed' };"))
    phone.tap("Put it there")
    offer(page).wait_for(state="detached")


def test_a_prompt_that_comes_before_the_screens_is_kept(take_screens):
    phone = take_screens(user_agent=ANDROID).holds(job_driver().open())
    phone.context.add_init_script(f"addEventListener('load', {PROMPTS});")
    page = phone.show()
    phone.tap("Put it there")
    assert page.evaluate("globalThis.prompted")


def test_put_off_it_is_remembered_and_comes_back_after_a_week(take_screens):
    phone = take_screens(user_agent=ANDROID).holds(job_driver().open())
    page = phone.show()
    phone.tap("Not now")
    offer(page).wait_for(state="detached")
    page.reload()
    page.get_by_role("link", name="Blue estate").wait_for()
    assert offer(page).count() == 0
    waits_longer(phone, page, 6)
    assert offer(page).count() == 0
    waits_longer(phone, page, 2)
    offer(page).wait_for()


def test_put_off_it_comes_back_plainer_once_much_is_unsent_and_nothing_promised(take_screens):
    driver = job_driver().open()
    phone = take_screens(user_agent=ANDROID).holds(driver)
    phone.context.add_init_script(KEEPS_NOTHING)
    page = phone.show()
    phone.tap("Not now")
    offer(page).wait_for(state="detached")

    driver.events.clear()
    for _ in range(20):
        driver.fact("comes_and_goes_set", value=True)
    other = phone.context.new_page()
    put_on_phone(other, phone.base, driver)
    other.close()
    page.reload()
    page.get_by_text("This can get lost").wait_for()
    page.get_by_text("The browser has not promised to keep it").wait_for()
    phone.tap("Not now")
    offer(page).wait_for(state="detached")
    page.reload()
    page.get_by_role("link", name="Blue estate").wait_for()
    assert offer(page).count() == 0


def test_on_an_iphone_with_work_on_the_page_it_says_what_the_home_screen_means(take_screens):
    phone = take_screens(user_agent=IPHONE).holds(job_driver().open())
    page = phone.show()
    page.get_by_text("The app on the home screen starts empty").wait_for()
    page.get_by_role("link", name="Show me how").click()
    page.get_by_text("It starts empty there").wait_for()
    page.get_by_role("link", name="1 job").wait_for()
    page.get_by_text("pair it with the copied link").wait_for()
    assert phone.lacks_room() == []


@pytest.mark.parametrize(("family", "sections"), [(IPHONE, 1), (ANDROID, 0)], ids=["iPhone", "Android"])
def test_a_label_that_the_camera_of_an_iphone_opened_leads_to_the_app_that_holds_it(
    take_screens, family, sections
):
    page = take_screens(user_agent=family).show(f"/U/{job_driver().codes[0]}")
    page.get_by_role("heading", name="You work here").wait_for()
    assert page.get_by_role("heading", name="You have Swaptrail on the home screen").count() == sections


def test_a_pairing_link_on_an_iphone_page_sends_to_the_home_screen_first(take_screens, screen_app):
    link = screen_app.link()
    phone = take_screens(user_agent=IPHONE)
    phone.context.add_init_script(CLIPBOARD)
    page = phone.show(link.removeprefix(screen_app.base))
    page.get_by_role("heading", name="First the home screen").wait_for()
    phone.tap("Copy the link")
    page.get_by_text("The link is copied.").wait_for()
    assert page.evaluate("globalThis.copied") == link

    installed = take_screens(user_agent=IPHONE)
    installed.context.add_init_script(INSTALLED)
    page = installed.show()
    page.get_by_role("link", name="Pair this phone").click()
    page.get_by_label("Pairing link").fill(link)
    installed.tap("Use this link")
    page.get_by_label("Your name").fill("Mara")
    installed.tap("Pair this phone")
    page.get_by_text("No job yet").wait_for()
    page.get_by_role("link", name="This phone: nothing to send").or_(
        page.get_by_role("link", name="This phone: all sent")
    ).wait_for()


@pytest.mark.parametrize(
    "page_of_trust", ["http://192.168.1.20:8766/", "http://[fd00::20]:8766/", "http://localhost:9/"]
)
def test_the_link_that_begins_with_trusting_the_server_pairs_here_too(
    take_screens, screen_app, page_of_trust
):
    phone = take_screens()
    page = phone.show("/#/pair")
    page.get_by_label("Pairing link").fill(f"{page_of_trust}#{screen_app.token()}")
    phone.tap("Use this link")
    page.get_by_label("Your name").fill("Mara")
    phone.tap("Pair this phone")
    page.get_by_text("No job yet").wait_for()


@pytest.mark.parametrize(
    ("pasted", "told"),
    [
        pytest.param("hello", "This is no pairing link.", id="no link"),
        pytest.param("https://other.example/pair#abc", "This link is for other.example", id="another server"),
        pytest.param("http://other.example/#abc", "This is no pairing link.", id="a page elsewhere"),
        pytest.param("http://192.168.1.20:8766/", "This is no pairing link.", id="the trust page alone"),
        pytest.param("{base}/pair", "the part after # is missing", id="cut off"),
        pytest.param("javascript:alert(1)//pair", "This is no pairing link.", id="a script"),
    ],
)
def test_a_pasted_text_that_pairs_nothing_says_why(take_screens, pasted, told):
    phone = take_screens()
    page = phone.show("/#/pair")
    page.get_by_label("Pairing link").fill(pasted.format(base=phone.base))
    phone.tap("Use this link")
    page.get_by_text(told).wait_for()
    assert page.get_by_label("Your name").count() == 0
