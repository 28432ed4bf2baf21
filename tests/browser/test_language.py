"""The language of a phone: as it is set or as chosen, offline too, and the record is the same in each."""

import pytest

from tests.browser.phone_log import facts
from tests.browser.seeded_job import job_driver
from tests.browser_support import Complaints
from tests.browser_support import wait_until
from tests.core.driver import JOB
from tests.static.builds import STYLE
from tests.static.builds import first_visit
from tests.static.builds import wait_for_app
from tests.static.test_offline import change_over
from tests.static.test_offline import has_new_build

SPANISH, ENGLISH = "Como en el teléfono", "As the phone has it"
KEPT_WORDS = """async () => {
  const found = [];
  for (const name of await caches.keys()) {
    for (const { url } of await (await caches.open(name)).keys()) {
      const [, of] = /\\/(?:words|help)\\/(\\w+)\\.(?:ftl|json)$/.exec(url) ?? [];
      if (of && name.includes('build')) found.push(of);
    }
  }
  return found.sort();
}"""


@pytest.fixture
def make_context(screen_browser):
    """Give a maker of phones by their language."""
    contexts = []

    def make(locale):
        contexts.append(screen_browser.new_context(viewport={"width": 390, "height": 844}, locale=locale))
        return contexts[-1]

    yield make
    for context in contexts:
        context.close()


@pytest.fixture
def complaints(screen_app):
    """Give an ear for pages; none of them may have complained by the end."""
    heard = Complaints(screen_app.base)
    yield heard
    assert heard.heard == []


def settings(page, base):
    page.goto(f"{base}/#/you")
    wait_for_app(page)
    return page


def choose(page, name):
    """Choose a language by its own name, or that of the phone."""
    with page.expect_event("load"):
        page.get_by_role("radio", name=name, exact=True).nth(0).click()
    wait_for_app(page)


def lang(page):
    return page.locator("html").get_attribute("lang")


def test_a_spanish_phone_speaks_spanish_offline_and_changes_to_english_and_back(
    make_context, screen_app, complaints
):
    context = make_context("es-ES")
    page = first_visit(context, screen_app, complaints)
    assert lang(page) == "es"
    assert page.evaluate(KEPT_WORDS) == ["es", "es"]

    context.set_offline(True)
    page.reload()
    settings(page, screen_app.base)
    page.get_by_role("group", name="Idioma").get_by_text(SPANISH).wait_for()
    page.get_by_role("radio", name="English").click()
    page.get_by_role("alert").get_by_text("English no está aún en este teléfono.").wait_for()
    assert page.get_by_role("radio", name=SPANISH, exact=True).nth(0).is_checked()
    assert lang(page) == "es"

    context.set_offline(False)
    choose(page, "English")
    page.get_by_role("group", name="Language").get_by_text(ENGLISH).wait_for()
    assert lang(page) == "en"
    assert page.evaluate(KEPT_WORDS) == ["en", "en", "es", "es"]

    context.set_offline(True)
    page.reload()
    wait_for_app(page)
    assert lang(page) == "en"
    choose(page, "Español")
    assert lang(page) == "es"
    choose(page, "English")
    assert lang(page) == "en"
    choose(page, ENGLISH)
    assert lang(page) == "es"
    page.close()


def test_a_language_that_is_not_there_is_english_and_the_next_one_of_the_phone_comes_first(
    make_context, screen_app
):
    for locale, used in (("fr-FR", "en"), ("es-419", "es"), ("en-GB", "en")):
        page = make_context(locale).new_page()
        settings(page, screen_app.base)
        assert lang(page) == used, locale
        page.close()


def test_what_is_read_before_the_words_have_come_is_in_the_phones_language_too(make_context, screen_app):
    page = make_context("es-ES").new_page()
    page.route("**/words/*.ftl", lambda route: route.abort())
    page.goto(screen_app.base)

    page.get_by_role("heading", name="La aplicación no llegó entera").wait_for()
    assert "The" not in page.inner_text("body")


def test_a_phone_set_to_another_language_offline_speaks_one_that_it_holds(make_context, screen_app):
    context = make_context("es-ES")
    page = first_visit(context, screen_app)
    page.evaluate("localStorage.setItem('swaptrail.language', 'en')")
    context.set_offline(True)

    page.reload()
    wait_for_app(page)
    assert lang(page) == "es"

    context.set_offline(False)
    page.reload()
    wait_for_app(page)
    assert lang(page) == "en"
    assert page.evaluate(KEPT_WORDS) == ["en", "en", "es", "es"]


def test_a_new_build_brings_the_languages_that_were_used_and_keeps_the_chosen_one(make_context, own_app):
    context = make_context("es-ES")
    page = first_visit(context, own_app)
    settings(page, own_app.base)
    choose(page, "English")
    has_new_build(page, own_app, "second")
    assert page.evaluate(KEPT_WORDS) == ["en", "en", "en", "en", "es", "es", "es", "es"]
    context.set_offline(True)

    change_over(page)

    assert page.evaluate(STYLE) == "second"
    assert lang(page) == "en"
    choose(page, SPANISH if lang(page) == "es" else ENGLISH)
    assert lang(page) == "es"


def test_while_a_new_build_waits_a_further_language_comes_with_it(make_context, own_app):
    """Its server has no words of the older build any more."""
    page = first_visit(make_context("es-ES"), own_app)
    has_new_build(page, own_app, "second")
    settings(page, own_app.base)

    page.get_by_role("radio", name="English").click()

    page.get_by_role("alert").get_by_text("Cambia primero a la versión nueva.").wait_for()
    change_over(page)
    choose(page, "English")
    assert lang(page) == "en"


def test_a_yard_of_two_languages_has_one_record(take_screens):
    """What is recorded names no language: the same taps make the same entries."""
    recorded = []
    for locale in ("es-ES", "en-GB"):
        driver = job_driver().open()
        driver.tap()
        phone = take_screens(locale=locale).holds(driver)
        page = phone.show(f"/#/job/{JOB}")
        assert lang(page) == locale[:2]
        asked = page.locator("main h1").inner_text()
        page.locator(".main-button").click()
        wait_until(page, "(asked) => document.querySelector('main h1').innerText !== asked", asked)
        recorded.append(facts(page))
    assert [each["kind"] for each in recorded[0]][-3:] == ["lamp_checked", "lamp_checked", "looked"]
    assert recorded[0] == recorded[1]
