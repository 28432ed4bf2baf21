"""Fixtures that every part of the suite shares."""

import os

import pytest
from hypothesis import settings

from tests import netns
from tests.hosts import Core
from tests.hosts import PhoneHost
from tests.static.app_server import AppServer
from tests.static.builds import OwnApp
from tests.wheels import build_wheel
from tests.wheels import unpack

# One commit gives one result: the ordinary run tries the same examples each time. The long run searches
# anew, and what it finds becomes a test of its own.
settings.register_profile("same", derandomize=True)
settings.register_profile("search", derandomize=False)
settings.load_profile("search" if os.environ.get("SWAPTRAIL_LONG") else "same")


def pytest_terminal_summary(terminalreporter):
    """Say what the run left out, and why."""
    left_out = [
        report
        for report in terminalreporter.stats.get("skipped", ())
        if netns.LEFT_OUT in str(report.longrepr)
    ]
    if left_out:
        terminalreporter.section("left out")
        terminalreporter.write_line(f"{len(left_out)} tests of {netns.WHAT}: {netns.missing()}.")


@pytest.fixture(scope="session")
def phone_host(request):
    """Give the phone's host of the core; a browser that cannot be found fails the run.

    With SWAPTRAIL_CORE=compiled all core tests run on what a wheel sends to phones.
    """
    compiled = os.environ.get("SWAPTRAIL_CORE") == "compiled"
    host = request.getfixturevalue("compiled_host") if compiled else PhoneHost()
    yield host
    host.close()


@pytest.fixture(scope="session")
def compiled_host(installed):
    """Give the phone's host with the compiled core of the wheel."""
    host = PhoneHost(installed / "server/_static")
    yield host
    host.close()


@pytest.fixture(params=["cpython", "phone"])
def core(request):
    """Give the core with an empty log, once in this process and once beside the phone's host."""
    if request.param == "cpython":
        return Core()
    return Core(request.getfixturevalue("phone_host"))


@pytest.fixture(scope="session")
def wheel(tmp_path_factory):
    """Give the package as it is installed."""
    return build_wheel(tmp_path_factory.mktemp("wheel"))


@pytest.fixture(scope="session")
def installed(wheel, tmp_path_factory):
    """Give a folder with the wheel's files; its dependencies come from this environment."""
    return unpack(wheel, tmp_path_factory.mktemp("installed"))


@pytest.fixture
def app_server(tmp_path):
    """Give the app on a data folder of its own."""
    server = AppServer(tmp_path / "data")
    yield server
    server.close()


@pytest.fixture
def own_app(tmp_path):
    """Give an app of which new builds can be made."""
    server = OwnApp(tmp_path)
    yield server
    server.close()
