"""Fixtures for tests of screens: one app and one browser for all of them, a phone for each."""

import contextlib

import pytest

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
