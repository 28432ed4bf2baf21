"""`serve --lan` and `trust`: what they print, what the two ports answer, what they refuse and how."""

import re
import socket
import ssl
from contextlib import closing
from datetime import UTC
from datetime import datetime
from datetime import timedelta
from ipaddress import ip_address

import pytest

from server.app import Config
from server.app import create_app
from server.commands.cli import main
from server.refusals import CommandRefused
from server.serving.lan import address
from server.serving.lan import instants
from server.serving.lan.address import Planned
from server.serving.lan.authority import new_authority
from server.serving.lan.greeting import Greeting
from server.serving.lan.network import Interface
from server.serving.lan.trust_page import certificate_name
from server.serving.serve import settled_base
from server.storage import DataFolder
from tests.server.serving.lan.conftest import Yard


def test_it_serves_https_under_a_name_of_its_own_and_says_what_it_made(own_yard):
    said = own_yard.text()
    assert re.fullmatch(r"https://swaptrail-[2-9a-hjkmnp-z]{4}\.local:\d+", own_yard.base)
    assert "Made now, once: a certificate authority, good until 20" in said
    assert f"{own_yard.host} and addresses inside private networks, and nothing else" in said
    assert "for trying out" in said
    assert any(set(line) <= set("█▀▄ ") and len(line) > 25 for line in own_yard.running.lines)

    head, body = own_yard.secure("/api/session")
    assert head.startswith("HTTP/1.1 200")
    assert b'"paired":false' in body
    assert own_yard.page.partition("127.0.0.1")[2].encode() in body  # where to get to trust it
    assert own_yard.running.end() == 0


def test_the_link_of_the_symbol_and_the_pairing_link_carry_one_token_behind_a_number_sign(yard):
    tokens = set(re.findall(r"http\S+#(\S+)", yard.text()))
    assert len(tokens) == 1
    assert f"{yard.base}/pair#{tokens.pop()}" in yard.text()
    assert "within 60 minutes" in yard.text()


def test_a_second_start_keeps_name_authority_and_fingerprint(serve_lan, own_yard, port):
    prints = re.findall(r"^    (\S{47})$", own_yard.text(), re.MULTILINE)
    assert len(prints) == 2
    own_yard.running.end()

    again = Yard(serve_lan(), own_yard.data)

    assert again.base == own_yard.base
    assert re.findall(r"^    (\S{47})$", again.text(), re.MULTILINE) == prints
    assert "Its own: a certificate authority" in again.text()


def test_nothing_over_https_or_http_tells_the_phone_to_take_https_alone(yard):
    # RFC 6797 knows no ports: one such header on the app's port shuts the trust page on the other.
    heads = [yard.secure(path)[0] for path in ("/", "/api/session", "/trusted.svg", "/none")]
    heads += [str(yard.plain(path)[0]) for path in ("", "trust.css", certificate_name(yard.host))]
    assert not any("strict-transport-security" in head.lower() for head in heads)


def test_the_cookie_is_the_installations_own_and_goes_over_https_alone(yard):
    head, _ = yard.secure("/api/session")
    cookie = re.search(r"Set-Cookie: (.*)", head)[1]
    assert cookie.startswith(f"swaptrail-{yard.base.rpartition(':')[2]}=")
    assert "Secure" in cookie
    assert "HttpOnly" in cookie
    assert "Domain" not in cookie


def test_a_request_under_another_name_is_led_to_the_installations_own(yard):
    context = ssl.create_default_context(cadata=yard.authority())
    port = int(yard.base.rpartition(":")[2])
    with (
        socket.create_connection(("127.0.0.1", port)) as raw,
        context.wrap_socket(raw, server_hostname=yard.host) as line,
    ):
        line.sendall(b"GET /U/X HTTP/1.1\r\nHost: elsewhere.example\r\nConnection: close\r\n\r\n")
        assert f"Location: {yard.base}/U/X" in line.recv(65536).decode()


def test_two_installations_of_one_name_keep_their_cookies_apart(tmp_path):
    # Cookies know no ports (RFC 6265, 8.5), and a name may have two installations behind it.
    names = {
        create_app(Config(tmp_path / str(port), f"https://yard.example:{port}")).config["SESSION_COOKIE_NAME"]
        for port in (443, 8765, 8775)
    }
    assert len(names) == 3


def test_an_authority_that_ends_soon_is_said_in_time(tmp_path):
    made = datetime.now(UTC)
    authority = new_authority("yard.local", made)
    place = Interface("eth0", (ip_address("192.168.1.20"),))
    said = Greeting(tmp_path, Planned("yard.local", 8765, 8766), authority, False, place, made)
    assert "the authority ends" not in "\n".join(said.lines(None, 60))
    late = said._replace(now=authority.ends - timedelta(days=40))
    assert "Caution: the authority ends in 40 days." in "\n".join(late.lines(None, 60))


def test_a_phone_without_the_authority_gets_no_connection(yard):
    with pytest.raises(ssl.SSLCertVerificationError):
        yard.secure("/", trusting=ssl.DER_cert_to_PEM_cert(new_authority(yard.host, instants.now()).der()))


def test_the_trust_page_hands_out_the_certificate_and_sets_no_cookie(yard):
    headers, body = yard.plain(certificate_name(yard.host))
    assert headers["Content-Type"] == "application/x-x509-ca-cert"
    assert headers["Content-Disposition"] is None
    assert ssl.DER_cert_to_PEM_cert(body).count("BEGIN CERTIFICATE") == 1

    headers, body = yard.plain("")
    assert headers["Set-Cookie"] is None
    assert "script-src 'self'" in headers["Content-Security-Policy"]
    assert "unsafe" not in headers["Content-Security-Policy"]
    shown = re.findall(r"<span>([0-9A-F]{2})</span>", body.decode())
    assert ":".join(shown[:16]) in yard.text()
    assert ":".join(shown[16:]) in yard.text()
    # The page is open to all: no token in it.
    assert re.search(r"#(\S{20,})", yard.text())[1].encode() not in body


def test_trust_prints_the_authority_and_how_to_take_it_off(yard, capsys):
    assert main(["trust", "--data", str(yard.data)]) == 0
    said = capsys.readouterr().out
    prints = re.findall(r"^    (\S{47})$", said, re.MULTILINE)
    assert prints == re.findall(r"^    (\S{47})$", yard.text(), re.MULTILINE)
    for words in (
        f"Swaptrail {yard.host}",
        "Good until   20",
        "192.168.0.0/16",
        "own certificate is good until",
        "Android, with Chrome: Settings,",
        "iPhone and iPad, with Safari: Settings,",
    ):
        assert words in said


# ---- refusals: exit 2, one sentence, and no data folder where there was none ----


def refused(capsys, *arguments):
    assert main(["serve", *arguments]) == 2
    said = capsys.readouterr()
    assert said.out == ""
    assert said.err.count("\n") == 1
    return said.err


@pytest.fixture
def asked(tmp_path, port):
    return ["--lan", "--interface", "lo", "--port", str(port), "--data", str(tmp_path / "new")]


@pytest.mark.parametrize(
    ("name", "words"),
    [
        ("my yard", "--name my yard is no host name"),
        ("yard-", "is no host name"),
        ("yärd", "is no host name"),
        ("a" * 64, "is no host name"),
        (".".join(["abcdefg"] * 40), "is no host name"),
        ("localhost", "every machine's name for itself"),
        ("one.two.local", "has a dot before .local"),
        ("1.2.3", "looks like an address and is none"),
        ("8.8.8.8", "no address of a private network"),
        ("127.0.0.1", "no address of a private network"),
        ("192.168.250.250", "this machine has"),
        (socket.gethostname().partition(".")[0] + ".local", "is the name of this machine itself"),
    ],
)
def test_a_bad_name_is_refused(capsys, asked, tmp_path, name, words):
    assert words in refused(capsys, *asked, "--name", name)
    assert not (tmp_path / "new").exists()


@pytest.mark.parametrize(("which", "option"), [(0, "--port"), (1, "--trust-port")])
def test_a_port_that_is_taken_is_refused(capsys, asked, tmp_path, port, which, option):
    with socket.socket() as taken:
        taken.bind(("127.0.0.1", port + which))
        taken.listen()
        said = refused(capsys, *asked)
    assert f"Port {port + which} is taken by another program" in said
    assert option in said
    assert not (tmp_path / "new").exists()


@pytest.mark.parametrize(
    ("more", "words"),
    [
        (["--port", "0"], "--port 0 is not a port"),
        (["--trust-port", "0"], "--trust-port 0 is not a port"),
        (["--port", "65535", "--trust-port", "65535"], "Take another one, such as 65534"),
        (["--port", "8765", "--trust-port", "8765"], "is the port of the app itself"),
        # Found out when authority and certificate have been made: they go too.
        (["--return-days", "-1"], "-1"),
        (["--warranty-days", "-1"], "--warranty-days -1"),
        (["--interface", "nowhere0"], "--interface nowhere0 is no interface of this machine"),
        (["--interface", "198.51.100.7"], "--interface 198.51.100.7 is no interface of this machine"),
        (["--host", "yard"], "Give the name with --name"),
    ],
)
def test_bad_options_are_refused(capsys, asked, tmp_path, more, words):
    assert words in refused(capsys, *asked, *more)
    assert not (tmp_path / "new").exists()


@pytest.mark.parametrize("option", ["--name", "--trust-port", "--interface"])
def test_options_of_the_network_want_lan(capsys, tmp_path, option):
    assert f"{option} 9 goes with --lan" in refused(capsys, "--data", str(tmp_path / "new"), option, "9")
    assert not (tmp_path / "new").exists()


@pytest.mark.parametrize("year", [1970, 2099])
def test_a_clock_wrong_by_years_is_refused(capsys, asked, tmp_path, monkeypatch, year):
    monkeypatch.setattr(instants, "now", lambda: datetime(year, 1, 1, tzinfo=UTC))
    assert f"The clock of this machine says {year}-01-01" in refused(capsys, *asked)
    assert not (tmp_path / "new").exists()


def test_a_machine_without_a_network_is_refused(capsys, asked, tmp_path, monkeypatch):
    monkeypatch.setattr("server.serving.lan.network.usable_interfaces", list)
    del asked[1:3]
    assert "no network address that a phone could reach" in refused(capsys, *asked)
    assert not (tmp_path / "new").exists()


def test_a_folder_of_localhost_stays_there(capsys, asked, tmp_path):
    settled_base(tmp_path / "new", None, 8765, "http")
    said = refused(capsys, *asked)
    assert "answers at http://localhost:8765 and stays there" in said
    assert "another --data" in said


def test_a_folder_of_the_network_keeps_its_name_and_port(capsys, own_yard, port):
    own_yard.running.end()
    data = str(own_yard.data)
    for more in (["--name", "other"], ["--port", str(port + 7)]):
        said = refused(capsys, "--lan", "--interface", "lo", "--data", data, *more)
        assert f"answers at {own_yard.base} and stays there" in said
    assert "Start it the way it was started first" in refused(capsys, "--data", data)


@pytest.mark.parametrize("made", [True, False])
def test_trust_refuses_a_folder_that_was_never_served_to_a_network(capsys, tmp_path, made):
    if made:
        DataFolder(tmp_path / "data").prepare()
    assert main(["trust", "--data", str(tmp_path / "data")]) == 2
    words = "was never served with --lan" if made else "holds no data of this program"
    assert words in capsys.readouterr().err
    assert (tmp_path / "data").exists() is made


def test_the_trust_page_of_the_highest_port_is_one_below_it(tmp_path):
    assert address.planned(tmp_path / "d", "yard.local", 65535, None).trust_port == 65534


def test_port_0_is_another_port_than_the_one_that_was_fixed(tmp_path):
    folder = DataFolder(tmp_path / "d")
    folder.prepare()
    with closing(folder.open()) as db:
        address.keep(db, address.planned(folder.root, "yard.local", 8765, None))

    with pytest.raises(CommandRefused, match="stays there"):
        address.planned(folder.root, None, 0, None)
    with pytest.raises(CommandRefused, match="--trust-port 0 is not a port"):
        address.planned(folder.root, None, None, 0)
