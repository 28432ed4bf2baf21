"""The files for running it as a service: each is tried as far as the machine of the tests lets it.

The Containerfile is tried with the wheel that it installs, in test_wheel.py.
"""

import json
import os
import re
import shutil
import signal
import subprocess
import sys
import time
from contextlib import closing
from pathlib import Path

import pytest

from server.clock import now_ms
from server.phones.pairing import make_link
from server.storage import DataFolder
from tests.ports import free_port
from tests.server.certificates import make_pair
from tests.server.commands.test_cli import Running
from tests.server.real_server import ROOT
from tests.server.serving.connections.client import Client

DEPLOY = ROOT / "server" / "deploy"
UNIT = (DEPLOY / "swaptrail.service").read_text("utf-8")
SITE = (DEPLOY / "nginx.conf").read_text("utf-8")
NAME = "swaptrail.example.org"
_PR_SET_NO_NEW_PRIVS, _PR_SET_MDWE = 38, 65


def lines_of(unit):
    return re.findall(r"^(\w+)=(.*)$", unit, re.MULTILINE)


def command_of(unit, data):
    """Returns the arguments that the unit starts the program with, as systemd puts them together."""
    settings = dict(lines_of(unit))
    name, _, value = settings["Environment"].strip('"').partition("=")
    line = settings["ExecStart"].replace(f"${name}", value).replace("${STATE_DIRECTORY}", str(data))
    program, *arguments = line.split()
    assert program == "/opt/swaptrail/bin/swaptrail"
    return arguments


# --- the systemd unit


def test_the_unit_shuts_the_service_in():
    settings = dict(lines_of(UNIT))

    assert settings["User"] == "swaptrail"
    assert settings["StateDirectory"] == "swaptrail"
    assert settings["StateDirectoryMode"] == "0700"
    assert settings["ProtectSystem"] == "strict"
    assert settings["CapabilityBoundingSet"] == ""
    assert set(settings["RestrictAddressFamilies"].split()) == {"AF_INET", "AF_INET6", "AF_UNIX"}
    on = {"NoNewPrivileges", "ProtectHome", "PrivateTmp", "PrivateDevices", "MemoryDenyWriteExecute"}
    assert {name for name in on if settings[name] == "yes"} == on
    assert [value for name, value in lines_of(UNIT) if name == "SystemCallFilter"] == [
        "@system-service",
        "~@privileged @resources",
    ]


def test_the_unit_never_gives_up():
    """The program ends with 2 for a typing error and for a network that is not up yet alike.

    So systemd cannot tell a refusal for good from one that passes, and has to try both again: a boot before
    the Wi-Fi must not leave a yard without a server.
    """
    settings = dict(lines_of(UNIT))

    assert settings["Restart"] == "on-failure"
    assert settings["RestartSec"] == "15"
    assert settings["StartLimitIntervalSec"] == "0"
    assert "StartLimitIntervalSec" in UNIT.partition("\n[Service]\n")[0], "systemd reads it in [Unit] alone"
    assert "RestartPreventExitStatus" not in settings
    assert settings["After"] == settings["Wants"] == "network-online.target"


def test_systemd_finds_nothing_amiss_in_the_unit(tmp_path):
    analyze = found_or_installed("systemd-analyze", "systemd")
    unit = tmp_path / "swaptrail.service"
    unit.write_text(UNIT.replace("/opt/swaptrail/bin/swaptrail", sys.executable))

    checked = subprocess.run(
        [analyze, "verify", unit], capture_output=True, text=True, timeout=60, check=False
    )
    assert (checked.returncode, checked.stderr) == (0, "")
    rated = subprocess.run(
        [analyze, "security", "--offline=yes", "--threshold=20", unit],
        capture_output=True, text=True, timeout=60, check=False,
    )  # fmt: skip
    assert rated.returncode == 0, rated.stdout[-500:]


def test_the_unit_starts_a_server_that_needs_no_more_than_it_gives(tmp_path):
    data, port = tmp_path / "state", free_port()
    data.mkdir(mode=0o700)
    arguments = [*command_of(UNIT, data), "--port", str(port)]
    running = Running(arguments, tmp_path, before=[*read_only_but(data), *SHUT_IN])
    try:
        running.wait_for(f"https://{NAME}/pair#")
        hop = f"X-Forwarded-For: 192.168.7.9\r\nX-Forwarded-Proto: https\r\nX-Forwarded-Host: {NAME}\r\n"
        with closing(Client(port)) as client:
            raw = f"GET /api/ping HTTP/1.1\r\nHost: x\r\n{hop}\r\n".encode()
            assert client.ask(raw).status == 200
    finally:
        assert running.end(signal.SIGTERM) == 0
    assert {path.name for path in data.iterdir()} == {"keys", "photos", "swaptrail.db"}


def read_only_but(folder):
    """Returns what starts a command in a view of the system that it may write to in `folder` alone.

    Where the tests may not make such a view, it is started in the system as it is.
    """
    if subprocess.run(["unshare", "-m", "true"], capture_output=True, check=False).returncode:
        print("not tried: the read-only system, for these tests may not make a view of it")
        return []
    script = (
        'mount --bind "$1" "$1" && mount -t tmpfs none /var/tmp && mount -o remount,ro,bind / && shift && '
        'TMPDIR=/var/tmp exec "$@"'
    )
    return ["unshare", "-m", "sh", "-c", script, "sh", str(folder)]


# Takes what the unit takes, where the kernel can (memory both written and run: since 6.3), then goes on.
SHUT_IN = [
    sys.executable,
    "-c",
    f"import ctypes, os, sys; take = ctypes.CDLL(None).prctl; take({_PR_SET_MDWE}, 1, 0, 0, 0); "
    f"take({_PR_SET_NO_NEW_PRIVS}, 1, 0, 0, 0); os.umask(0o077); os.execv(sys.argv[1], sys.argv[1:])",
]


# --- the reverse proxy


def found_or_installed(program, package):
    """Returns a program's path; fetches its package where that can be done."""
    found = shutil.which(program) or shutil.which(program, path="/usr/sbin:/sbin")
    if not found and os.geteuid() == 0 and shutil.which("apt-get"):
        for command in (["update"], ["install", "-y", "--no-install-recommends", package]):
            subprocess.run(["apt-get", *command], check=False, capture_output=True)
        found = shutil.which(program, path="/usr/bin:/usr/sbin")
    assert found, f"{program} is not here and could not be fetched: apt-get install {package}"
    return found


class Proxy:
    """The example site, served by nginx on loopback in front of a server."""

    def __init__(self, folder, behind):
        self.port, self.plain_port = free_port(), free_port()
        self.own = make_pair(folder, [NAME])
        site = SITE
        for before, after in {
            "127.0.0.1:8765": f"127.0.0.1:{behind}",
            "listen 443 ssl": f"listen 127.0.0.1:{self.port} ssl",
            "listen 80;": f"listen 127.0.0.1:{self.plain_port};",
            "/etc/ssl/swaptrail/cert.pem": str(self.own.cert),
            "/etc/ssl/swaptrail/key.pem": str(self.own.key),
        }.items():
            assert site.count(before) == 1, before
            site = site.replace(before, after)
        site = re.sub(r"^ *listen \[::\].*\n", "", site, flags=re.MULTILINE)
        temporary = "".join(
            f"{kind}_temp_path {folder}/{kind};\n"
            for kind in ("client_body", "proxy", "fastcgi", "uwsgi", "scgi")
        )
        user = "user root;\n" if os.geteuid() == 0 else ""
        (folder / "whole.conf").write_text(
            f"{user}pid {folder}/pid;\nevents {{}}\nhttp {{\naccess_log off;\n{temporary}{site}\n}}\n"
        )
        self.command = [
            found_or_installed("nginx", "nginx-light"),
            "-p", str(folder), "-c", str(folder / "whole.conf"), "-e", "stderr", "-g", "daemon off;",
        ]  # fmt: skip

    def __enter__(self):
        subprocess.run([*self.command, "-t"], check=True, capture_output=True)
        self.process = subprocess.Popen(self.command, stderr=subprocess.DEVNULL)
        until = time.monotonic() + 20
        while time.monotonic() < until:
            try:
                Client(self.plain_port).close()
            except OSError:
                assert self.process.poll() is None, "the proxy did not start"
                time.sleep(0.02)
            else:
                return self
        raise AssertionError("the proxy does not answer")

    def __exit__(self, *_):
        self.process.terminate()
        self.process.wait(timeout=20)

    def ask(self, method, path, body=b"", source="127.0.0.5", **headers):
        """Asks through the proxy, from another address of this machine."""
        headers = {"Host": NAME, "Content-Length": len(body), "Connection": "close", **headers}
        lines = [f"{name.replace('_', '-')}: {value}" for name, value in headers.items()]
        with closing(Client(self.port, self.own.cert, source=source, name=NAME)) as client:
            return client.ask("\r\n".join([f"{method} {path} HTTP/1.1", *lines, "", ""]).encode() + body)


@pytest.fixture
def proxy(tmp_path):
    behind = free_port()
    running = Running(
        ["serve", "--data", "shop", "--behind-proxy", "--host", NAME, "--port", str(behind)], tmp_path
    )
    try:
        running.wait_for("Ctrl-C ends it")
        folder = tmp_path / "proxy"
        folder.mkdir()
        with Proxy(folder, behind) as proxy:
            yield proxy
    finally:
        running.end(signal.SIGTERM)


FORGED = {
    "X_Forwarded_For": "9.9.9.9",
    "X_Forwarded_Host": "evil.example",
    "X_Forwarded_Proto": "http",
    "X_Forwarded_Prefix": "/evil",
    "Forwarded": "for=9.9.9.9",
}


def test_a_phone_pairs_through_the_proxy_and_what_it_forges_counts_for_nothing(proxy, tmp_path):
    with closing(DataFolder(tmp_path / "shop").open()) as db:
        token = make_link(db, f"https://{NAME}", now_ms()).partition("#")[2]
    session = proxy.ask("GET", "/api/session", **FORGED)
    cookie = session.headers["Set-Cookie"].partition(";")[0]
    assert "; Secure" in session.headers["Set-Cookie"]
    body = json.dumps({"token": token, "device": "d00000000000000aa", "name": "Mara"}).encode()

    with_csrf = {"Cookie": cookie, "X_CSRFToken": session.json()["csrf"], "Origin": f"https://{NAME}"}
    paired = proxy.ask("POST", "/api/pair", body, **with_csrf, **FORGED)

    assert paired.json() == {"paired": True, "name": "Mara", "role": "bench"}
    cookie = paired.headers["Set-Cookie"].partition(";")[0]
    log = proxy.ask("GET", "/api/phones", Cookie=cookie).json()["log"]
    assert [(line["what"], line["address"]) for line in log] == [("paired", "127.0.0.5")]
    large = proxy.ask(
        "POST", "/api/records/check", bytes(5_000_000),
        Cookie=cookie, X_CSRFToken=proxy.ask("GET", "/api/session", Cookie=cookie).json()["csrf"],
    )  # fmt: skip
    assert large.json()["outcome"] == "none"


def test_the_proxy_passes_pages_on_and_leads_to_https(proxy):
    page = proxy.ask("GET", "/", Accept_Encoding="identity")
    assert page.status == 200
    assert b"evil" not in proxy.ask("GET", "/", Accept_Encoding="identity", **FORGED).body
    with closing(Client(proxy.plain_port)) as plain:
        answer = plain.ask(f"GET /U/K7F3M HTTP/1.1\r\nHost: {NAME}\r\n\r\n".encode())
    assert (answer.status, answer.headers["Location"]) == (308, f"https://{NAME}/U/K7F3M")


def test_another_name_is_refused_through_the_proxy_too(proxy):
    answer = proxy.ask("GET", "/api/ping", Host="evil.example")

    assert answer.status == 421


def test_each_file_says_how_it_is_used():
    for path in (DEPLOY / "swaptrail.service", DEPLOY / "Containerfile", DEPLOY / "nginx.conf"):
        assert path.read_text("utf-8").startswith("# ")
    assert Path(DEPLOY / "__init__.py").is_file(), "so that they are part of the package"
