"""The content policy really stands in the browser, and a test hears whatever breaks it."""

import pytest

from tests.browser_support import Complaints
from tests.browser_support import wait_until
from tests.static.phone_parts import open_bare

BREACHES = {
    "script-src-elem": "document.head.append(Object.assign(document.createElement('script'), "
    "{ textContent: 'window.ran = true' }))",
    "img-src": "document.body.append(Object.assign(new Image(), { src: 'http://elsewhere.test/a.png' }))",
    "connect-src": "fetch('http://elsewhere.test/').catch(() => undefined)",
}


@pytest.mark.parametrize("directive", BREACHES)
def test_what_breaks_the_policy_is_stopped_and_heard(make_context, shared_app, directive):
    complaints = Complaints(shared_app.base)
    page = open_bare(make_context(), shared_app.base, complaints)
    page.evaluate("() => { addEventListener('securitypolicyviolation', () => { window.broken = true; }); }")

    page.evaluate(f"() => {{ {BREACHES[directive]}; }}")

    wait_until(page, "window.broken")
    page.wait_for_timeout(100)
    assert page.evaluate("window.ran") is None
    assert [each for each in complaints.heard if f"broken policy: {directive}" in each]


def test_the_page_may_be_zoomed(bare_page):
    content = bare_page.locator("meta[name=viewport]").get_attribute("content")
    assert "user-scalable" not in content
    assert "maximum-scale" not in content
