"""The yard's network: the name announced and resolved, a phone that opens the app by it, an end with goodbye.

The server and the phone are in network namespaces of their own, joined by a cable; nothing leaves them.
"""

import ipaddress
import json
import re
import signal
import ssl
import time

import pytest
from cryptography import x509
from cryptography.hazmat.primitives.serialization import Encoding

from server.serving.lan import announce
from server.serving.lan.authority import existing_authority
from server.serving.lan.renewal import FILE
from server.storage import DataFolder
from tests import netns
from tests.browser.mechanic import Mechanic
from tests.browser.phone import Phone
from tests.server.commands.test_cli import Running
from tests.server.serving.lan.forging import forged
from tests.server.serving.lan.trusting import PATIENT
from tests.server.serving.lan.trusting import browser_of

PORT, TRUST_PORT = 8765, 8766
# Looks at the machine's addresses ten times as often as a server does, so that a change is soon followed.
OFTEN = (
    "-c",
    "import functools, sys; from server.commands.cli import main; from server.serving.lan import serve_lan;"
    "serve_lan.Announcer = functools.partial(serve_lan.Announcer, look_seconds=0.5); sys.exit(main())",
)
NEIGHBOUR = ("-m", "tests.server.serving.lan.neighbour")
PLAIN = f"http://{netns.YARD}:{TRUST_PORT}/"


@pytest.fixture
def started():
    """Everything that was started; it ends with the test."""
    running = []
    yield running
    for each in running:
        if each.process.poll() is None:
            each.end(signal.SIGKILL)


@pytest.fixture
def serve(machines, tmp_path, started):
    """Start the server on the yard's machine."""

    def run(*arguments):
        before = machines.inside(machines.yard)
        started.append(Running(["serve", "--lan", *arguments], tmp_path, program=OFTEN, before=before))
        return started[-1]

    return run


@pytest.fixture
def neighbour(machines, tmp_path, started):
    """Start a neighbour on the phone's machine."""

    def run(*arguments):
        before = machines.inside(machines.phone)
        started.append(Running(arguments, tmp_path, program=NEIGHBOUR, before=before))
        return started[-1]

    return run


def name_of(server):
    server.wait_for("Ctrl-C ends it")
    return server.wait_for(r"https://([a-z0-9.-]+):")[1]


def heard(listener):
    return [json.loads(line) for line in listener.lines]


def ask(neighbour, name, wait_ms=10_000):
    """Return the addresses of a name, or none when nobody has answered for so long."""
    asking = neighbour("ask", name, str(wait_ms))
    asking.ends()
    return json.loads(asking.lines[-1])


def test_the_name_resolves_says_goodbye_at_the_end_and_is_not_heard_after_it(serve, neighbour):
    listener = neighbour("listen")
    listener.wait_for("listens")
    server = serve()
    name = name_of(server)

    assert set(ask(neighbour, name)) >= {netns.YARD}
    listener.wait_for(f'"name": "{re.escape(name)}.", "ttl": 120')

    assert server.end(signal.SIGTERM) == 0
    # RFC 6762, 10.1: a goodbye is the record with a time to live of 0.
    listener.wait_for(f'"name": "{re.escape(name)}.", "ttl": 0')
    told = [record for record in heard(listener) if record.get("name") == f"{name}."]
    assert {record["address"] for record in told if "address" in record} == {netns.YARD, netns.YARD_6}
    assert ask(neighbour, name, announce.ASK_MS) == []


def test_a_name_that_another_machine_announces_is_refused(serve, neighbour, tmp_path):
    other = neighbour("announce", "yard.local", netns.PHONE)
    other.wait_for("announces")

    server = serve("--name", "yard")
    assert server.ends() == 2

    (said,) = server.lines
    assert f"yard.local is announced in this network by another machine, at {netns.PHONE}" in said
    assert "--name" in said
    assert not (tmp_path / "data").exists()


def test_a_machine_that_takes_the_name_later_is_said(serve, neighbour):
    server = serve("--name", "yard")
    name_of(server)
    neighbour("announce", "yard.local", netns.PHONE).wait_for("announces")
    server.wait_for(f"yard.local is announced in this network by another machine, at {netns.PHONE}")


def test_a_changed_address_is_announced_and_certified_while_it_serves(serve, neighbour, machines):
    server = serve()
    name = name_of(server)
    listener = neighbour("listen")
    listener.wait_for("listens")

    machines.ip(machines.yard, f"addr del {netns.YARD}/24 dev v0")
    machines.ip(machines.yard, "addr add 10.77.0.9/24 dev v0")
    machines.ip(machines.yard, f"route replace default via {netns.PHONE}")

    listener.wait_for(rf'"{re.escape(name)}.", "ttl": 120, "type": 1, "address": "10.77.0.9"', seconds=40)
    assert "10.77.0.9" in ask(neighbour, name)
    assert "10.77.0.9" in shown(neighbour, "10.77.0.9", name)


def shown(neighbour, address, name):
    """Return the names in the certificate that the server shows at an address."""
    asking = neighbour("certificate", address, str(PORT), name)
    asking.ends()
    return json.loads(asking.lines[-1])


def test_no_network_is_said(machines, serve, tmp_path):
    machines.ip(machines.yard, "link del v0")
    server = serve()
    assert server.ends() == 2
    assert "no network address that a phone could reach" in server.lines[0]
    assert not (tmp_path / "data").exists()


@pytest.fixture
def take_phone(machines, tmp_path):
    """Give phones on the phone's machine that know the name, with the authority trusted or not."""
    phones = []

    def take(name, host, base, authority=None):
        folder = tmp_path / name
        browser = browser_of(folder / "home", authority, machines.inside(machines.phone))
        # The browser of a desktop asks DNS alone; the phones' systems resolve .local by themselves.
        rules = [f"--host-resolver-rules=MAP {host} {netns.YARD}"]
        phones.append(Phone(folder, base, browser=browser, args=rules))
        phones[-1].page.add_init_script(PATIENT)
        return phones[-1]

    yield take
    for phone in phones:
        phone.close()


def test_a_phone_that_trusts_the_authority_works_offline_and_syncs(serve, neighbour, take_phone, tmp_path):
    server = serve()
    host = name_of(server)
    base = f"https://{host}:{PORT}"
    token = re.search(r"#(\S+)", "\n".join(server.lines))[1]
    authority = tmp_path / "authority.pem"
    fetched = neighbour("fetch", f"{PLAIN}{host.removesuffix('.local')}.crt")
    fetched.ends()
    authority.write_text(ssl.DER_cert_to_PEM_cert(bytes.fromhex(json.loads(fetched.lines[-1]))))

    phone = take_phone("trusting", host, base, authority)
    page = phone.page
    page.goto(f"{PLAIN}#{token}")
    page.get_by_role("button", name="Check this phone").tap()
    phone.see("This phone trusts the server.")
    page.get_by_role("link", name="Go on: pair this phone").tap()
    page.get_by_label("Your name").fill("Mara")
    phone.tap("Pair this phone")
    page.get_by_role("button", name="Open a job").wait_for()
    phone.wait_for_offline_use()
    assert page.url.startswith(base)
    assert page.evaluate("() => isSecureContext")

    phone.offline()
    page.reload()
    mechanic = Mechanic(phone)
    mechanic.opens_a_job()
    mechanic.enters_a_test("right outer")
    mechanic.photographs(1)
    phone.see("not sent yet")
    phone.online()
    page.reload()
    phone.see("all sent")
    plain = f"request to another address: {PLAIN}"
    assert [said for said in phone.complaints.heard if not said.startswith(plain)] == []


def authority_in(data, host, pem):
    """Return the authority of a data folder, and write its certificate where a browser takes it from."""
    authority = existing_authority(DataFolder(data), host)
    pem.write_bytes(authority.certificate.public_bytes(Encoding.PEM))
    return authority


def test_no_browser_takes_the_authority_for_a_public_name_or_address(
    serve, neighbour, machines, take_phone, tmp_path
):
    host = name_of(serve())
    keys, pem = tmp_path / "data" / "keys", tmp_path / "authority.pem"
    authority = authority_in(tmp_path / "data", host, pem)
    public = "203.0.113.5"  # RFC 5737: nobody's; the phone's way there leads to the yard
    machines.ip(machines.yard, f"addr add {public}/32 dev v0")
    page = take_phone("trusting", "shop.example", f"https://{host}:{PORT}", pem).page
    machines.ip(machines.phone, f"route add {public}/32 via {netns.YARD}")

    for place, name, taken in (
        ("shop.example", x509.DNSName("shop.example"), False),
        (public, x509.IPAddress(ipaddress.ip_address(public)), False),
        (netns.YARD, x509.IPAddress(ipaddress.ip_address(netns.YARD)), True),
    ):
        (keys / "forged").write_bytes(forged(authority, name).pem())
        (keys / "forged").replace(keys / FILE)
        until = time.monotonic() + 20  # the server looks at its file once in a second
        while shown(neighbour, netns.YARD, host) != [str(name.value)]:
            assert time.monotonic() < until, f"the server does not take up its certificate for {name.value}"
        if taken:
            assert page.goto(f"https://{place}:{PORT}/api/ping").status == 421  # let in, under a foreign name
        else:
            with pytest.raises(Exception, match="ERR_CERT"):
                page.goto(f"https://{place}:{PORT}/api/ping")


def test_a_phone_without_trust_sees_the_plain_page_and_the_browsers_warning(serve, take_phone):
    server = serve()
    host = name_of(server)
    base = f"https://{host}:{PORT}"

    page = take_phone("stranger", host, base).page
    page.goto(PLAIN)
    page.get_by_role("button", name="Check this phone").tap()
    page.get_by_text("Not yet: this phone does not trust the server.").wait_for()
    assert not page.get_by_role("link", name="Go on").is_visible()
    with pytest.raises(Exception, match="ERR_CERT_AUTHORITY_INVALID"):
        page.goto(f"{base}/")


@pytest.mark.parametrize("name", [netns.YARD, "yard.example.org"])
def test_an_address_or_a_dns_name_serves_too_and_announces_nothing(
    serve, neighbour, take_phone, tmp_path, name
):
    listener = neighbour("listen")
    listener.wait_for("listens")
    server = serve("--name", name)
    assert name_of(server) == name
    said = "\n".join(server.lines)
    assert ("has to stay the address of this machine for good" in said) == (name == netns.YARD)
    assert "5353" not in said

    authority_in(tmp_path / "data", name, tmp_path / "authority.pem")
    base = f"https://{name}:{PORT}"
    phone = take_phone("trusting", name, base, tmp_path / "authority.pem")
    phone.visit(re.search(rf"{base}/pair#\S+", said)[0])
    phone.page.evaluate("() => navigator.serviceWorker.ready.then(() => 1)")
    assert phone.complaints.heard == []
    assert server.end(signal.SIGTERM) == 0
    assert heard(listener) == [{"listens": True}]


def test_a_second_machine_in_the_yard_is_announced_beside_the_first_and_keeps_off_its_port(
    serve, neighbour, tmp_path
):
    first = name_of(serve())
    other = serve("--data", str(tmp_path / "other"))
    assert other.ends() == 2
    assert f"Port {PORT} is taken by another program" in other.lines[0]
    assert not (tmp_path / "other").exists()

    second = serve("--data", str(tmp_path / "second"), "--port", str(PORT + 10))
    assert name_of(second) != first
    assert netns.YARD in ask(neighbour, first)
    assert netns.YARD in ask(neighbour, name_of(second))
