"""Fixtures for tests of the phone app: the app on a port, pages without its screens, profiles."""

import pytest

from server.web.shell import find_static
from tests.browser_support import Complaints
from tests.browser_support import launch
from tests.browser_support import launch_profile
from tests.static.app_server import AppServer
from tests.static.phone_parts import Phone
from tests.static.phone_parts import open_bare


@pytest.fixture(scope="session")
def browser():
    """Give a browser that is shared; each test takes a context of its own."""
    browser = launch()
    yield browser
    browser.close()


@pytest.fixture(scope="session")
def _shared_app(tmp_path_factory):
    server = AppServer(tmp_path_factory.mktemp("shared-app"))
    yield server
    server.close()


@pytest.fixture
def shared_app(_shared_app):
    """Give the app, for tests that leave nothing behind on the server."""
    _shared_app.requests.clear()
    yield _shared_app
    _shared_app.fault = None


@pytest.fixture(scope="session")
def checkout_app(tmp_path_factory):
    """Give the app as a developer runs it, each module a file; leave nothing behind on the server."""
    server = AppServer(tmp_path_factory.mktemp("checkout-app"), find_static())
    yield server
    server.close()


@pytest.fixture
def context(browser):
    """Give a phone that has never been here."""
    context = browser.new_context(viewport={"width": 390, "height": 844})
    yield context
    context.close()


@pytest.fixture
def make_context(browser, shared_app):
    """Give a maker of empty phones without a service worker; each ends with the test."""
    contexts = []

    def make(**options):
        options.setdefault("service_workers", "block")
        context = browser.new_context(viewport={"width": 390, "height": 844}, **options)
        contexts.append(context)
        return context

    yield make
    for context in contexts:
        context.close()


@pytest.fixture
def bare_page(make_context, shared_app):
    """Give a page of the app in which nothing has been started: modules can be tried one by one."""
    context = make_context()
    complaints = Complaints(shared_app.base)
    page = open_bare(context, shared_app.base, complaints)
    yield page
    assert complaints.heard == []


@pytest.fixture(scope="module")
def asked_page(browser, _shared_app):
    """Give a bare page that the tests of a module share: they ask what modules answer, and leave nothing."""
    context = browser.new_context(service_workers="block")
    complaints = Complaints(_shared_app.base)
    yield open_bare(context, _shared_app.base, complaints)
    context.close()
    assert complaints.heard == []


@pytest.fixture
def make_profile(tmp_path):
    """Give a maker of phones that keep their data in a folder; each ends with the test."""
    contexts = []

    def make(name="phone", **options):
        context = launch_profile(tmp_path / name, **options)
        contexts.append(context)
        return context

    yield make
    for context in contexts:
        context.close()


@pytest.fixture
def make_phone(browser, app_server):
    """Give a maker of phones on the same server."""
    contexts = []

    def make(**options):
        context = browser.new_context(service_workers="block")
        contexts.append(context)
        return Phone(context, app_server, **options)

    yield make
    for context in contexts:
        context.close()
