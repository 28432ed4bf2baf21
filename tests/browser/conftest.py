"""Fixtures for tests of screens: one app and one browser for all of them, a phone for each."""

import contextlib

import pytest

from tests.browser.clerk import Clerk
from tests.browser.returned import put_on_server
from tests.browser.returned import returned
from tests.browser.screens import FAKE_CAMERA
from tests.browser.screens import screens
from tests.browser_support import launch
from tests.static.app_server import AppServer


@pytest.fixture(scope="session")
def screen_browser():
    """Give a browser with a made-up camera; each phone takes a context of its own."""
    browser = launch(args=FAKE_CAMERA)
    yield browser
    browser.close()


@pytest.fixture(scope="module")
def camera(shared_camera):
    """Give the camera of the browser; it shows nothing unless a test holds something before it."""
    return shared_camera


@pytest.fixture(scope="session")
def screen_app(tmp_path_factory):
    """Give the app, shared: phones that are not paired leave nothing behind on it."""
    server = AppServer(tmp_path_factory.mktemp("screens"))
    yield server
    server.close()


@pytest.fixture
def take_screens(screen_browser, screen_app):
    """Give a maker of phones; none may have complained by the end of the test."""
    with contextlib.ExitStack() as phones:
        yield lambda **options: phones.enter_context(screens(screen_browser, screen_app.base, **options))


@pytest.fixture
def clerk_at(tmp_path, app_server):
    """Give a maker of clerks, each with the labels of so many returns that it puts on the server."""
    clerks = []

    def make(count, **options):
        entries, codes = returned(count)
        put_on_server(app_server, entries)
        clerk = Clerk(tmp_path / f"clerk{len(clerks)}", app_server, **options)
        clerks.append(clerk)
        clerk.comes_to_the_counter()
        return clerk, codes

    yield make
    for clerk in clerks:
        clerk.leaves()
