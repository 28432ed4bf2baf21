"""`swaptrail serve` with a certificate of one's own, and behind a proxy: what is served, what refused."""

import json
import re
import shutil
import signal
from contextlib import closing

import pytest

from server.app import Config
from server.app import create_app
from server.clock import now_ms
from server.commands.cli import main
from server.phones.pairing import make_link
from server.storage import DataFolder
from tests.ports import free_port
from tests.server.certificates import make_pair
from tests.server.commands.test_cli import Running
from tests.server.phone import Phone
from tests.server.phone import assert_refused
from tests.server.serving.connections.client import Client

NAME = "shop.example"
BASE = f"https://{NAME}"
HOP = {"X-Forwarded-For": "192.168.7.9", "X-Forwarded-Proto": "https", "X-Forwarded-Host": NAME}


@pytest.fixture
def start(tmp_path):
    started = []

    def run(*arguments):
        started.append(Running(["serve", "--data", "shop", *map(str, arguments)], tmp_path))
        return started[-1]

    yield run
    for running in started:
        if running.process.poll() is None:
            running.end(signal.SIGKILL)


def ping(port, cafile=None, **headers):
    """Asks the server as a phone would; returns (status, body)."""
    lines = [f"{name.replace('_', '-')}: {value}" for name, value in headers.items()]
    with closing(Client(port, cafile)) as client:
        answer = client.ask("\r\n".join(["GET /api/ping HTTP/1.1", *lines, "", ""]).encode())
    return answer.status, answer.body


# --- a certificate of one's own


def test_a_certificate_of_ones_own_is_served_and_followed(start, tmp_path):
    port, own = free_port(), make_pair(tmp_path)
    running = start(
        "--cert", own.cert, "--key", own.key, "--host", "localhost", "--bind", "127.0.0.1", "--port", port
    )
    assert running.wait_for(r"https://\S+/pair#\S+")[0].startswith(f"https://localhost:{port}/")
    running.wait_for("Ctrl-C ends it")
    assert ping(port, own.cert, Host=f"localhost:{port}")[0] == 200
    newer = make_pair(tmp_path, stem="newer")

    shutil.copy(newer.cert, own.cert)
    shutil.copy(newer.key, own.key)

    running.wait_for("certificate in .* was changed and is served now", ask=lambda: _try(port))
    assert ping(port, newer.cert, Host=f"localhost:{port}")[0] == 200
    assert running.end() == 0


def _try(port):
    """Connects, for the files are looked at when somebody does."""
    with closing(Client(port)) as client:
        client.send(b"x")


def test_the_folder_stays_at_its_name_and_scheme(start, tmp_path, capsys):
    port, own = free_port(), make_pair(tmp_path)
    both = ["--cert", str(own.cert), "--key", str(own.key)]
    first = start(*both, "--host", "localhost", "--bind", "127.0.0.1", "--port", port)
    first.wait_for("Ctrl-C ends it")
    assert first.end() == 0

    again = start(*both, "--bind", "127.0.0.1")
    again.wait_for(f"https://localhost:{port}")
    assert again.end() == 0
    for other in ([], [*both, "--port", str(free_port())]):
        assert main(["serve", "--data", str(tmp_path / "shop"), *other]) == 2
        assert f"answers at https://localhost:{port} and stays there" in capsys.readouterr().err


@pytest.mark.parametrize(
    ("how", "said"),
    [
        ({"names": [NAME], "begins": -900, "ends": -500}, "ran out on"),
        ({"names": [NAME], "begins": 900, "ends": 1200}, "this machine's clock says"),
        ({"names": ["other.example"]}, f"is for other.example, and phones ask for {NAME}"),
    ],
    ids=["expired", "a clock that is wrong by years", "foreign"],
)
def test_a_certificate_that_is_not_fit_stops_the_start(tmp_path, capsys, how, said):
    own = make_pair(tmp_path, **how)
    arguments = ["--cert", str(own.cert), "--key", str(own.key), "--host", NAME, "--bind", "127.0.0.1"]

    assert main(["serve", "--data", str(tmp_path / "shop"), *arguments]) == 2

    error = capsys.readouterr().err
    assert said in error
    assert error.count("\n") == 1
    assert not (tmp_path / "shop").exists()


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (["--cert", "c"], "--cert is given without --key"),
        (["--key", "k"], "--key is given without --cert"),
        (["--lan", "--behind-proxy"], "--lan and --behind-proxy exclude each other"),
        (["--cert", "c", "--key", "k", "--lan"], "--lan and --cert and --key exclude each other"),
        (["--cert", "c", "--key", "k", "--behind-proxy"], "exclude each other"),
        (["--bind", "127.0.0.1"], "--bind 127.0.0.1 goes with"),
        (["--lan", "--bind", "127.0.0.1"], "--bind 127.0.0.1 goes with"),
        (["--behind-proxy"], "--host is missing"),
        (["--cert", "c", "--key", "k"], "--host is missing"),
        (["--cert", "none.pem", "--key", "k", "--host", NAME], "none.pem: there is no such file"),
        (["--behind-proxy", "--host", NAME, "--bind", "here"], "--bind here is no IP address"),
        (["--behind-proxy", "--host", "192.168.1.9"], "is a bare IP address"),
        (["--behind-proxy", "--host", "https://shop.example"], "is no name of a machine"),
        (["--behind-proxy", "--host", NAME, "--port", "0"], "--port 0 is not a port"),
        (["--behind-proxy", "--host", NAME, "--bind", "203.0.113.9"], "cannot be opened"),
    ],
    ids=lambda value: " ".join(value) if isinstance(value, list) else "",
)
def test_what_does_not_go_together_is_refused_and_leaves_nothing(tmp_path, capsys, arguments, said):
    assert main(["serve", "--data", str(tmp_path / "shop"), *arguments]) == 2

    error = capsys.readouterr().err
    assert said in error
    assert error.count("\n") == 1
    assert list(tmp_path.iterdir()) == []


# --- behind a proxy


@pytest.fixture
def behind(tmp_path, small_static):
    return create_app(Config(tmp_path / "shop", BASE, small_static, behind_proxy=True))


def asked(app, changes=None, path="/api/ping", **how):
    """Asks as the proxy does, at the address where it finds the server."""
    headers = [(name, value) for name, value in {**HOP, **(changes or {})}.items() if value is not None]
    return app.test_client().open(path, base_url="http://127.0.0.1:8765", headers=headers, **how)


def test_a_request_by_the_proxy_is_answered(behind):
    assert asked(behind).status_code == 200


@pytest.mark.parametrize(
    ("changes", "field"),
    [
        ({"X-Forwarded-For": None}, "X-Forwarded-For"),
        ({"X-Forwarded-For": "10.0.0.1, 192.168.7.9"}, "X-Forwarded-For"),
        ({"X-Forwarded-For": "a phone"}, "X-Forwarded-For"),
        ({"X-Forwarded-For": "192.168.7.9:4711"}, "X-Forwarded-For"),
        ({"X-Forwarded-Proto": None}, "X-Forwarded-Proto"),
        ({"X-Forwarded-Proto": "http"}, "X-Forwarded-Proto"),
        ({"X-Forwarded-Proto": "https, https"}, "X-Forwarded-Proto"),
        ({"X-Forwarded-Host": None}, "X-Forwarded-Host"),
        ({"X-Forwarded-Host": f"evil.example, {NAME}"}, "X-Forwarded-Host"),
    ],
    ids=str,
)
def test_a_hop_that_is_amiss_is_refused_with_what_to_do(behind, changes, field):
    error = assert_refused(asked(behind, changes), 400, field)

    assert "only through its proxy" in error["message"]
    assert "Have the proxy set that header itself" in error["message"]


@pytest.mark.parametrize("host", ["evil.example", "127.0.0.1:8765", f"{NAME}:444", f"{NAME}.evil.example"])
def test_another_name_is_refused_behind_a_proxy_too(behind, host):
    assert_refused(asked(behind, {"X-Forwarded-Host": host}), 421, "Host")
    page = asked(behind, {"X-Forwarded-Host": host}, "/U/K7F3M")
    assert (page.status_code, page.headers["Location"]) == (307, f"{BASE}/U/K7F3M")


def test_what_a_client_claims_beside_the_hop_counts_for_nothing(behind):
    claims = {"X-Forwarded-Prefix": "/evil", "X-Forwarded-Port": "99", "Forwarded": "for=9.9.9.9;host=evil"}
    page = asked(behind, claims, "/")

    assert page.status_code == 200
    assert b"evil" not in page.data
    assert asked(behind, {**claims, "X-Forwarded-Host": "x"}, "/a").headers["Location"] == f"{BASE}/a"


def test_limits_and_log_see_the_phone_and_not_the_proxy(behind, tmp_path):
    class Proxied(Phone):
        def write(self, method, path, headers=None, **options):
            return super().write(method, path, {**HOP, **self.hop, **(headers or {})}, **options)

        def get(self, path, **options):
            return super().get(path, headers={**HOP, **self.hop}, **options)

    guesser, honest = Proxied(behind, base=BASE), Proxied(behind, base=BASE)
    guesser.hop, honest.hop = {}, {"X-Forwarded-For": "192.168.7.10"}
    body = {"token": "guess", "device": guesser.device, "name": "Nobody"}
    for phone in (guesser, honest):
        phone.ask_session()
    while guesser.post("/api/pair", body).status_code != 429:
        pass

    assert_refused(honest.post("/api/pair", body), 403, "token")
    with closing(DataFolder(tmp_path / "shop").open()) as db:
        assert honest.pair_by(make_link(db, BASE, now_ms())).status_code == 200
    honest.ask_session()
    log = honest.get("/api/phones").get_json()["log"]
    assert [line["address"] for line in log[:3]] == ["192.168.7.10", "192.168.7.10", "192.168.7.9"]


def test_cookies_are_secure_behind_a_proxy(behind):
    assert "Secure" in asked(behind, path="/api/session").headers["Set-Cookie"]


def test_without_a_proxy_forwarded_headers_count_for_nothing(app):
    answer = app.test_client().get(
        "/api/ping", base_url="http://evil.example", headers={**HOP, "Host": "evil.example"}
    )

    assert_refused(answer, 421, "Host")


def test_the_command_serves_a_proxy_on_loopback(start):
    port = free_port()
    running = start("--behind-proxy", "--host", NAME, "--port", port)
    assert running.wait_for(r"https://\S+/pair#\S+")[0].startswith(f"{BASE}/pair#")
    running.wait_for(rf"The proxy finds it at http://127\.0\.0\.1:{port}")
    running.wait_for("Ctrl-C ends it")
    hop = {name.replace("-", "_"): value for name, value in HOP.items()}

    assert ping(port, Host=NAME, **hop)[0] == 200
    assert ping(port, Host=f"127.0.0.1:{port}", **hop)[0] == 200
    assert ping(port, Host=NAME)[0] == 400
    doubled = b"".join(b"X-Forwarded-For: 192.168.7.%d\r\n" % host for host in (1, 2))
    with closing(Client(port)) as client:
        raw = b"GET /api/ping HTTP/1.1\r\nHost: x\r\nX-Forwarded-Proto: https\r\n"
        answer = client.ask(raw + b"X-Forwarded-Host: shop.example\r\n" + doubled + b"\r\n")
    assert answer.status == 400
    assert json.loads(answer.body)["error"]["found"] == '"192.168.7.1, 192.168.7.2"'
    assert running.end() == 0
    again = start("--behind-proxy", "--port", free_port())  # where the proxy finds it may change
    again.wait_for(re.escape(BASE))
    assert again.end() == 0
