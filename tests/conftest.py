"""Fixtures that every part of the suite shares."""

import atexit
import os
import sys
import tempfile

import pytest
from hypothesis import HealthCheck
from hypothesis import settings

from tests import browser_support
from tests import netns
from tests.hosts import Core
from tests.hosts import PhoneAnswers
from tests.hosts import PhoneHost
from tests.postgres import Postgres
from tests.static.app_server import AppServer
from tests.static.builds import OwnApp
from tests.wheels import built
from tests.wheels import unpack

# One commit gives one result: the ordinary run tries the same examples each time. The long run searches
# anew, and what it finds becomes a test of its own. How long an example takes says how busy the machine is.
_any_speed = {"deadline": None, "suppress_health_check": [HealthCheck.too_slow]}
settings.register_profile("same", derandomize=True, **_any_speed)
settings.register_profile("search", derandomize=False, **_any_speed)
settings.load_profile("search" if os.environ.get("SWAPTRAIL_LONG") else "same")


# Fixtures that start a browser: whoever asks for one, itself or through another, is marked `browser`.
STARTS_BROWSER = {
    "browser",
    "camera_browser",
    "compiled_answers",
    "gallery",
    "make_profile",
    "phone_answers",
    "screen_browser",
    "take_phone",
}


MEMORY_WANTED = 4 * 2**30  # bytes free; a whole run leaves a tenth of it at a time


def pytest_configure(config):
    """Spare each start of a program its compiling, and each commit of a data folder its wait for a disk.

    The next run of tests is such a start: a third of a collection is the compiling of tests.
    """
    os.environ.pop("PYTHONDONTWRITEBYTECODE", None)
    sys.dont_write_bytecode = False
    memory = "/dev/shm" if _memory_serves("/dev/shm") else None
    if memory:
        os.environ.setdefault("PYTEST_DEBUG_TEMPROOT", memory)
    if not hasattr(config, "workerinput"):
        _leave_nothing_behind(memory)


def _leave_nothing_behind(parent):
    """Have temporary files of this run, and of all that it starts, in one folder that goes away at the end.

    A browser or server that is killed leaves its own, and some tests kill them.
    """
    folder = tempfile.TemporaryDirectory(prefix="swaptrail-tests-", dir=parent, ignore_cleanup_errors=True)
    os.chmod(folder.name, 0o711)  # PostgreSQL runs as nobody where the tests run as root
    tempfile.tempdir = os.environ["TMPDIR"] = folder.name
    atexit.register(folder.cleanup)


def _memory_serves(folder):
    """Tell whether there is a file system in memory that has room and lets programs run."""
    try:
        found = os.statvfs(folder)
    except (OSError, AttributeError):  # no such folder; no such question on this system
        return False
    return not found.f_flag & os.ST_NOEXEC and found.f_bavail * found.f_frsize > MEMORY_WANTED


@pytest.hookimpl(tryfirst=True)
def pytest_collection_modifyitems(items):
    """Mark the tests that need a browser, so that one may leave them out."""
    for item in items:
        if STARTS_BROWSER & set(item.fixturenames) or item.path.parent.name == "browser":
            item.add_marker(pytest.mark.browser)


@pytest.hookimpl(tryfirst=True)
def pytest_runtest_setup(item):
    """Let only a test that is marked start a browser."""
    browser_support.may_start = any(item.iter_markers("browser")) or any(item.iter_markers("phone"))


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
def phone_answers(request):
    """Give the answers of the phone's host; a browser that cannot be found fails the run.

    With SWAPTRAIL_CORE=compiled all core tests run on what a wheel sends to phones.
    """
    if os.environ.get("SWAPTRAIL_CORE") == "compiled":
        yield request.getfixturevalue("compiled_answers")
        return
    host = PhoneHost()
    yield PhoneAnswers(host)
    host.close()


@pytest.fixture(scope="session")
def compiled_answers(installed):
    """Give the answers of the phone's host with the compiled core of the wheel."""
    host = PhoneHost(installed / "server/_static")
    yield PhoneAnswers(host)
    host.close()


@pytest.fixture(params=["cpython", pytest.param("phone", marks=pytest.mark.phone)])
def core(request):
    """Give the core with an empty log, once in this process and once beside the phone's host."""
    if request.param == "cpython":
        yield Core()
        return
    answers = request.getfixturevalue("phone_answers")
    yield Core(answers)
    answers.compare()


@pytest.fixture
def compiled_core(compiled_answers):
    """Give the core with an empty log beside the phone's host with the compiled core."""
    yield Core(compiled_answers)
    compiled_answers.compare()


@pytest.fixture(scope="session")
def postgres():
    """Give one PostgreSQL for the whole run."""
    server = Postgres()
    yield server
    server.close()


@pytest.fixture(scope="session")
def wheel():
    """Give the package as it is installed."""
    return built().wheel


@pytest.fixture(scope="session")
def installed(wheel, tmp_path_factory):
    """Give a folder with the wheel's files; its dependencies come from this environment."""
    return unpack(wheel, tmp_path_factory.mktemp("installed"))


@pytest.fixture(scope="module")
def shared_camera(tmp_path_factory):
    """Give the camera of `camera_browser`, which the tests of a module share."""
    return browser_support.FakeCamera(tmp_path_factory.mktemp("camera") / "camera.y4m")


@pytest.fixture(scope="module")
def camera_browser(shared_camera):
    """Give one browser with that camera."""
    browser = browser_support.launch(args=shared_camera.arguments())
    yield browser
    browser.close()


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
