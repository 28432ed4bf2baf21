"""A phone asks what is new while somebody can see it, and never in a hurry when asking brings nothing.

The server of these tests can keep no answer back, so a phone asks it every two seconds;
tests/browser/test_two_phones.py has one that does.
"""

import json

import pytest

from tests.browser_support import wait_until

#: A while in which a phone that did not hold back would have asked eight times.
WHILE_MS = 2500
SEEN = """(state) => {
  Object.defineProperty(document, 'visibilityState', { value: state, configurable: true });
  document.dispatchEvent(new Event('visibilitychange'));
}"""


def asked(server):
    return server.paths().count("/api/news")


@pytest.fixture
def phone(make_phone, app_server):
    """Give a paired phone whose loop runs by itself."""
    phone = make_phone()
    app_server.requests.clear()
    return phone


def start(phone):
    phone.page.evaluate("sync.start()")


def until_asked(phone, server, times):
    wait_until_python(phone, lambda: asked(server) >= times)


def wait_until_python(phone, holds):
    """Wait until it holds, with the page at work meanwhile."""
    for _ in range(400):
        if holds():
            return
        phone.page.wait_for_timeout(50)
    raise AssertionError("it did not come to that")


def instead(status, value):
    """Answer every question for news so."""

    def fault(environ, _app):
        if environ["PATH_INFO"] != "/api/news":
            return None
        return status, "application/json", json.dumps(value).encode()

    return fault


def test_entries_of_another_are_fetched_when_the_server_says_so(phone, make_phone, app_server):
    start(phone)
    until_asked(phone, app_server, 1)
    other = make_phone()
    other.record("of the other")
    other.sync()

    wait_until(phone.page, "async () => (await records()).length === 1", seconds=20)
    assert phone.complaints.heard == []


def test_nobody_is_asked_while_the_screen_is_hidden(phone, app_server):
    start(phone)
    until_asked(phone, app_server, 1)
    phone.page.evaluate(SEEN, "hidden")
    phone.page.wait_for_timeout(1000)
    before = asked(app_server)
    phone.page.wait_for_timeout(WHILE_MS)
    assert asked(app_server) == before

    phone.page.evaluate(SEEN, "visible")
    until_asked(phone, app_server, before + 1)


def test_a_phone_that_is_not_paired_asks_nothing(make_phone, app_server):
    phone = make_phone(paired=False)
    start(phone)
    phone.page.wait_for_timeout(2000)
    assert asked(app_server) == 0


def test_a_server_that_knows_no_news_is_asked_once(phone, app_server):
    error = {"field": "path", "found": "", "wanted": "", "message": "Nothing here."}
    app_server.fault = instead("404 NOT FOUND", {"error": error})
    start(phone)
    until_asked(phone, app_server, 1)
    phone.page.wait_for_timeout(WHILE_MS)
    assert asked(app_server) == 1
    assert phone.sync()["state"] == "sent"
    assert all("404" in heard for heard in phone.complaints.heard)


def test_news_that_cannot_be_fetched_are_not_asked_for_in_a_hurry(phone, app_server):
    app_server.fault = instead("200 OK", {"entries": 99, "others": [], "stamp": "", "pause": 0})
    start(phone)
    until_asked(phone, app_server, 1)
    phone.page.wait_for_timeout(WHILE_MS)
    assert asked(app_server) <= 4


def test_an_answer_that_is_none_is_not_asked_for_in_a_hurry(phone, app_server):
    app_server.fault = instead("200 OK", {"welcome": "to the network of the yard"})
    start(phone)
    until_asked(phone, app_server, 1)
    phone.page.wait_for_timeout(WHILE_MS)
    assert asked(app_server) <= 4
    assert phone.status()["state"] == "sent"


def test_the_place_of_a_phone_is_said_when_it_changes(phone, app_server):
    said = []

    def listen(environ, _app):
        if environ["PATH_INFO"] == "/api/news":
            body = environ["wsgi.input"].read(int(environ["CONTENT_LENGTH"]))
            said.append(json.loads(body)["at"])
            answer = {"entries": 0, "others": [], "stamp": "a", "pause": 60}
            return "200 OK", "application/json", json.dumps(answer).encode()
        return None

    app_server.fault = listen
    start(phone)
    wait_until_python(phone, lambda: said == [None])
    at = {"job": "j1", "doing": "test", "positions": ["rear-left"]}
    phone.page.evaluate("(at) => sync.at(at)", at)
    wait_until_python(phone, lambda: said == [None, at])
    phone.page.evaluate("(at) => sync.at({ ...at })", at)
    phone.page.evaluate("sync.at(null)")
    wait_until_python(phone, lambda: said == [None, at, None])
