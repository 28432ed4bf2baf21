"""Fixtures that every part of the suite shares."""

import pytest

from tests.hosts import Core
from tests.hosts import PhoneHost


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
