"""Fixtures that every part of the suite shares."""

import os

import pytest
from hypothesis import settings

from tests.hosts import Core
from tests.hosts import PhoneHost
from tests.static.app_server import AppServer

# One commit gives one result: the ordinary run tries the same examples each time. The long run searches
# anew, and what it finds becomes a test of its own.
settings.register_profile("same", derandomize=True)
settings.register_profile("search", derandomize=False)
settings.load_profile("search" if os.environ.get("SWAPTRAIL_LONG") else "same")


@pytest.fixture(scope="session")
def phone_host():
    """Give the phone's host of the core; a browser that cannot be found fails the run."""
    host = PhoneHost()
    yield host
    host.close()


@pytest.fixture(params=["cpython", "phone"])
def core(request):
    """Give the core with an empty log, once in this process and once beside the phone's host."""
    if request.param == "cpython":
        return Core()
    return Core(request.getfixturevalue("phone_host"))


@pytest.fixture
def app_server(tmp_path):
    """Give the app on a data folder of its own."""
    server = AppServer(tmp_path / "data")
    yield server
    server.close()
