"""The trust page on a phone: the right steps, any width, light and dark, and what its check says."""

import re
from datetime import UTC
from datetime import datetime
from pathlib import Path

import pytest

from server.serving.lan.phone_steps import FAMILIES
from tests.browser.every_screen import AXE
from tests.browser.every_screen import RULES
from tests.browser.every_screen import RUN
from tests.browser_support import Complaints
from tests.browser_support import launch
from tests.browser_support import launch_profile
from tests.server.serving.lan.conftest import two_free_ports
from tests.server.serving.lan.loopback import HOST
from tests.server.serving.lan.loopback import LoopbackYard
from tests.server.serving.lan.trusting import PATIENT
from tests.server.serving.lan.trusting import browser_of

ROOT = Path(__file__).resolve().parents[4]
PAGE = ROOT / "server" / "serving" / "lan" / "page"
ANDROID = "Mozilla/5.0 (Linux; Android 10; K) Chrome/156.0.0.0 Mobile"
IPHONE = "Mozilla/5.0 (iPhone; CPU iPhone OS 18_5 like Mac OS X) Version/18.5 Mobile Safari"


@pytest.fixture(scope="module")
def yard(tmp_path_factory):
    yard = LoopbackYard(tmp_path_factory.mktemp("yard") / "data", two_free_ports(), datetime.now(UTC))
    yield yard
    yard.close()


@pytest.fixture(scope="module")
def browser():
    browser = launch(args=[f"--host-resolver-rules=MAP {HOST} 127.0.0.1"])
    yield browser
    browser.close()


@pytest.fixture
def open_page(browser, yard):
    """Open the page with a fresh phone; return it and what was complained about."""
    contexts = []

    def open_it(width=390, agent=ANDROID, address=None, **options):
        contexts.append(
            browser.new_context(viewport={"width": width, "height": 844}, user_agent=agent, **options)
        )
        complaints = Complaints(yard.page)
        page = complaints.listen(contexts[-1].new_page())
        page.goto(address or yard.page)
        return page, complaints.heard

    yield open_it
    for context in contexts:
        context.close()


@pytest.mark.parametrize(
    ("agent", "opened"), [(ANDROID, "android"), (IPHONE, "iphone"), ("Mozilla/5.0 (X11)", "")]
)
def test_the_steps_of_the_phones_own_family_are_open(open_page, agent, opened):
    page, heard = open_page(agent=agent)
    for family in FAMILIES:
        assert page.locator(f"#{family.id}").get_attribute("open") == ("" if family.id == opened else None)
    page.locator("details").evaluate_all("(all) => all.forEach((each) => { each.open = true; })")
    for picture in page.locator("img").all():
        picture.scroll_into_view_if_needed()
        assert picture.evaluate("(img) => img.decode().then(() => img.naturalWidth > 0)")
    assert page.locator("li").count() == sum(len(family.steps) for family in FAMILIES)
    assert heard == []


@pytest.mark.parametrize("text", [100, 200])
@pytest.mark.parametrize("width", [320, 390, 844])
def test_it_holds_at_any_width_and_with_large_text(open_page, width, text):
    page, heard = open_page(width)
    page.locator("details").evaluate_all("(all) => all.forEach((each) => { each.open = true; })")
    # As a phone does it whose text size is doubled: the page's own sizes are in rem.
    page.evaluate("(text) => { document.documentElement.style.fontSize = `${1.125 * text}%`; }", text)
    assert page.evaluate("() => document.documentElement.scrollWidth") <= width
    for target in page.locator("a:visible, button:visible, summary").all():
        box = target.bounding_box()
        assert box["height"] >= 48, target.inner_text()
        assert box["x"] >= 0
        assert box["x"] + box["width"] <= width
    assert page.get_by_role("button", name="Check this phone").bounding_box()["height"] >= 64
    assert heard == []


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_axe_finds_nothing_in_it(open_page, scheme):
    page, _ = open_page(color_scheme=scheme, bypass_csp=True)  # axe alone needs the policy off
    page.locator("details").evaluate_all("(all) => all.forEach((each) => { each.open = true; })")
    page.evaluate(AXE)
    assert page.evaluate(RUN, RULES) == []


def test_its_colours_are_the_apps():
    styles = (PAGE / "trust-colours.css").read_text()
    own = [
        dict(re.findall(r"--([a-z-]+): (#[0-9a-f]{6});", block))
        for block in re.findall(r":root[^{]*\{([^}]*)\}", styles)
    ]
    tokens = (ROOT / "static" / "styles" / "tokens.css").read_text()
    found = re.findall(r"--([a-z-]+): light-dark\((#[0-9a-f]{6}), (#[0-9a-f]{6})\);", tokens)
    apps = [{name: light for name, light, _ in found}, {name: dark for name, _, dark in found}]

    assert len(own) == 2
    for mine, theirs in zip(own, apps, strict=True):
        assert len(mine) == 15
        assert mine.items() <= theirs.items()


def test_each_picture_has_both_themes_and_the_dark_one_no_light_colour(open_page, yard):
    page, _ = open_page(color_scheme="dark", agent=IPHONE)
    shown = page.locator("#iphone img").first.evaluate("(img) => img.decode().then(() => img.currentSrc)")
    assert shown == f"{yard.page}pictures/dark/iphone-allow.svg"
    light = {
        colour
        for file in PAGE.glob("pictures/*.svg")
        for colour in re.findall("#[0-9a-f]{6}", file.read_text())
    }
    for file in PAGE.glob("pictures/*.svg"):
        dark = page.request.get(f"{yard.page}pictures/dark/{file.name}").text()
        assert not light & set(re.findall("#[0-9a-f]{6}", dark))
        assert "style" not in dark


def test_a_phone_without_trust_is_told_so(open_page, yard):
    page, heard = open_page(address=f"{yard.page}#token")
    page.get_by_role("button", name="Check this phone").click()
    page.get_by_text("Not yet: this phone does not trust the server.").wait_for()
    assert page.locator("#standing").get_attribute("data-standing") == "no"
    assert not page.get_by_role("link", name="Go on").is_visible()
    assert [said for said in heard if "ERR_CERT_AUTHORITY_INVALID" not in said and yard.base not in said
            and yard.planned.page not in said] == []  # fmt: skip


@pytest.mark.browser
def test_a_phone_that_does_not_find_the_name_is_told_so(yard):
    browser = launch(args=["--host-resolver-rules=MAP *.local ~NOTFOUND"])
    page = browser.new_page()
    page.goto(yard.page)
    page.get_by_role("button", name="Check this phone").click()
    page.get_by_text(f"This phone does not find {HOST}.").wait_for()
    browser.close()


@pytest.mark.parametrize(
    ("hash_part", "words", "path"),
    [("#a-token", "Go on: pair this phone", "/pair#a-token"), ("", "Go on to the app", "/")],
)
@pytest.mark.browser
def test_a_phone_that_trusts_it_is_led_on_and_the_token_stays_behind_the_number_sign(
    yard, tmp_path, hash_part, words, path
):
    program = browser_of(tmp_path / "home", yard.write_authority(tmp_path / "authority.pem"))
    rules = [f"--host-resolver-rules=MAP {HOST} 127.0.0.1"]
    context = launch_profile(tmp_path / "profile", browser=program, args=rules)
    page = context.pages[0]
    page.add_init_script(PATIENT)
    asked = []
    page.on("request", lambda request: asked.append(request.url))
    page.goto(f"{yard.page}{hash_part}")
    page.get_by_role("button", name="Check this phone").click()
    page.get_by_text("This phone trusts the server.").wait_for()
    on = page.get_by_role("link", name=words)
    assert on.get_attribute("href") == f"{yard.base}{path}"
    assert context.cookies() == []
    if hash_part:
        on.click()
        page.get_by_label("Your name").wait_for()
        assert not any("a-token" in url.partition("#")[0] for url in asked)
    context.close()
