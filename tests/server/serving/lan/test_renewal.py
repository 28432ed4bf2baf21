"""The server's certificate stays fresh while it serves: by age, by the machine's addresses, by the clock."""

import errno
import ipaddress
import stat
import threading
from datetime import UTC
from datetime import datetime
from datetime import timedelta

import pytest
from cryptography import x509

from server.serving.lan import renewal as renewing
from server.serving.lan.authority import new_authority
from server.serving.lan.leaf import names_of
from server.serving.lan.renewal import LONGEST_WAIT
from server.serving.lan.renewal import RETRY_WAIT
from server.serving.lan.renewal import Renewal

HOST = "swaptrail-k7f3.local"
DAY = timedelta(days=1)
START = datetime(2026, 3, 1, tzinfo=UTC)
OLD, NEW = (ipaddress.ip_address(f"192.168.1.{number}") for number in (20, 21))


class Clock:
    def __init__(self):
        self.now = START

    def __call__(self):
        return self.now


@pytest.fixture
def clock():
    return Clock()


@pytest.fixture
def renewal(tmp_path, clock):
    return Renewal(new_authority(HOST, START), tmp_path / "pair.pem", [OLD], clock)


def served(renewal):
    return x509.load_pem_x509_certificate(renewal.path.read_bytes())


def test_a_certificate_is_kept_over_starts_until_two_thirds_of_its_life(renewal, clock):
    first = served(renewal)
    assert stat.S_IMODE(renewal.path.stat().st_mode) == 0o600
    assert renewal.due() - first.not_valid_before_utc == timedelta(days=397) * 2 / 3

    clock.now = renewal.due() - timedelta(seconds=1)
    again = Renewal(renewal._authority, renewal.path, [OLD], clock)
    assert again.leaf.certificate == first

    clock.now = again.due()
    later = Renewal(renewal._authority, renewal.path, [OLD], clock)
    assert later.leaf.certificate != first
    assert later.leaf.begins == clock.now - DAY
    assert served(renewal) == later.leaf.certificate


def test_it_is_renewed_while_serving(renewal, clock):
    first = served(renewal)
    with renewal:
        clock.now = renewal.due() + DAY
        renewal.look()
        assert served(renewal) != first
    assert [thread.name for thread in threading.enumerate() if "renews" in thread.name] == []


def test_the_thread_wakes_by_itself_when_it_is_due(tmp_path, clock, monkeypatch):
    monkeypatch.setattr("server.serving.lan.renewal.LONGEST_WAIT", timedelta(milliseconds=10))
    renewal = Renewal(new_authority(HOST, START), tmp_path / "pair.pem", [OLD], clock)
    replaced = threading.Event()
    first = served(renewal)
    monkeypatch.setattr(
        "server.serving.lan.renewal._replace",
        lambda path, content: (path.write_bytes(content), replaced.set()),
    )
    with renewal:
        clock.now = renewal.due()
        assert replaced.wait(10)
    assert served(renewal) != first


def test_new_addresses_come_into_a_new_certificate(renewal):
    assert x509.IPAddress(OLD) in names_of(renewal.leaf.certificate)
    renewal.look([NEW])
    assert names_of(served(renewal)) == [x509.DNSName(HOST), x509.IPAddress(NEW)]
    before = served(renewal)
    renewal.look([NEW])
    assert served(renewal) == before


def test_a_clock_set_back_gets_a_certificate_that_is_good_now(renewal, clock):
    clock.now = START + 200 * DAY
    ahead = Renewal(renewal._authority, renewal.path.with_name("ahead.pem"), [OLD], clock)
    clock.now = START
    ahead.look()
    assert ahead.leaf.begins <= clock.now < ahead.leaf.ends


def test_the_last_certificate_ends_with_its_authority_and_is_made_once(renewal, clock):
    clock.now = renewal._authority.ends - 2 * DAY
    renewal.look()
    last = served(renewal)
    assert last.not_valid_after_utc == renewal._authority.ends
    clock.now = renewal._authority.ends - timedelta(minutes=1)
    renewal.look()
    assert served(renewal) == last


@pytest.mark.parametrize("content", [b"", b"nonsense", None])
def test_a_damaged_file_is_written_anew(renewal, clock, content):
    if content is None:
        other = Renewal(new_authority(HOST, START), renewal.path.with_name("other.pem"), [OLD], clock)
        content = other.path.read_bytes()  # of another authority of the same name
    renewal.path.write_bytes(content)
    again = Renewal(renewal._authority, renewal.path, [OLD], clock)
    served(again).verify_directly_issued_by(renewal._authority.certificate)


class Waits(threading.Condition):
    """Lets time pass in steps: each wait does what is next, and the last one ends the renewal."""

    def __init__(self, renewal, *steps):
        super().__init__()
        self.renewal, self.steps, self.waited = renewal, list(steps), []

    def wait(self, timeout=None):
        self.waited.append(timedelta(seconds=timeout))
        if self.steps:
            self.steps.pop(0)()
        else:
            self.renewal._ended = True


def run_through(renewal, *steps):
    """Runs what the thread runs; returns how long it waited before each step and at the end."""
    renewal._changed = waits = Waits(renewal, *steps)
    renewal._renew_when_due()
    return waits.waited


def test_a_full_disk_is_told_once_and_tried_again(renewal, clock, monkeypatch, caplog):
    first = served(renewal)
    replace = renewing._replace
    reasons = [errno.ENOSPC, errno.ENOSPC, errno.EROFS, errno.ENOSPC]
    words = {errno.ENOSPC: "No space left on device", errno.EROFS: "Read-only file system"}
    tries = []

    def fail(path, content):
        tries.append(path)
        number = reasons[len(tries) - 1]
        raise OSError(number, words[number], f"{path}.{len(tries)}.part")

    monkeypatch.setattr(renewing, "_replace", fail)
    clock.now = renewal.due()

    def repair():
        monkeypatch.setattr(renewing, "_replace", replace)

    waited = run_through(renewal, *[lambda: None] * (len(reasons) - 1), repair)

    assert len(tries) == len(reasons)
    assert waited == [RETRY_WAIT] * len(reasons) + [LONGEST_WAIT]
    said = [record.getMessage() for record in caplog.records]
    assert [words[errno.ENOSPC] in line for line in said] == [True, False]
    assert words[errno.EROFS] in said[1]
    assert served(renewal) == renewal.leaf.certificate != first
    assert renewal.leaf.begins == clock.now - DAY


def test_addresses_that_could_not_be_written_are_taken_up_later(renewal, monkeypatch):
    replace = renewing._replace
    monkeypatch.setattr(renewing, "_replace", lambda *_: (_ for _ in ()).throw(OSError(errno.ENOSPC, "full")))
    renewal.look([NEW])
    assert x509.IPAddress(OLD) in names_of(renewal.leaf.certificate)

    monkeypatch.setattr(renewing, "_replace", replace)
    run_through(renewal)
    assert names_of(served(renewal)) == [x509.DNSName(HOST), x509.IPAddress(NEW)]


@pytest.mark.parametrize("years", [-3, 11], ids=["before the authority", "after its end"])
def test_a_clock_outside_the_authoritys_life_keeps_the_certificate_until_it_is_right(
    renewal, clock, years, caplog
):
    first = served(renewal)
    clock.now = START + 365 * years * DAY

    def set_right():
        assert served(renewal) == renewal.leaf.certificate == first
        clock.now = START + 300 * DAY

    waited = run_through(renewal, lambda: None, set_right)

    assert waited == [RETRY_WAIT, RETRY_WAIT, LONGEST_WAIT]
    assert len(caplog.records) == 1
    assert "the clock says" in caplog.text
    assert served(renewal) == renewal.leaf.certificate != first
    assert renewal.leaf.begins == clock.now - DAY
