"""Where a server listens, seen from another machine; both are network namespaces joined by a cable."""

import signal
import subprocess
import sys

import pytest

from tests import netns
from tests.server.certificates import make_pair
from tests.server.commands.test_cli import Running
from tests.server.real_server import ROOT

NAME, PORT = "shop.example", 8765
ASK = """
import socket, ssl, sys
host, port, cafile, name = sys.argv[1:]
with socket.create_connection((host, int(port)), timeout=10) as raw:
    with ssl.create_default_context(cafile=cafile).wrap_socket(raw, server_hostname=name) as line:
        lines = ["GET /api/ping HTTP/1.1", f"Host: {name}:{port}", "Connection: close", "", ""]
        line.sendall("\\r\\n".join(lines).encode())
        print(line.recv(100).split()[1].decode())
"""


@pytest.fixture
def serve(machines, tmp_path):
    """Starts the server on the yard's machine."""
    started = []

    def run(*arguments):
        before = machines.inside(machines.yard)
        running = Running(["serve", "--host", NAME, *map(str, arguments)], tmp_path, before=before)
        started.append(running)
        running.wait_for("Ctrl-C ends it")

    yield run
    for running in started:
        assert running.end(signal.SIGTERM) == 0


@pytest.fixture
def ask(machines):
    """Asks from the phone's machine; returns what came, or the last line of what went wrong."""

    def run(host, cafile):
        command = [*machines.inside(machines.phone), sys.executable, "-c", ASK, host, str(PORT), cafile, NAME]
        done = subprocess.run(
            list(map(str, command)), cwd=ROOT, capture_output=True, text=True, timeout=30, check=False
        )
        return done.stdout.strip() or done.stderr.strip().splitlines()[-1]

    return run


def test_with_a_certificate_it_listens_to_every_network_of_the_machine(serve, ask, tmp_path):
    own = make_pair(tmp_path, [NAME])
    other = make_pair(tmp_path, [NAME], stem="other")

    serve("--cert", own.cert, "--key", own.key)

    assert ask(netns.YARD, own.cert) == "200"
    assert ask(netns.YARD_6, own.cert) == "200"
    assert "certificate verify failed" in ask(netns.YARD, other.cert)


@pytest.mark.parametrize("way", ["--bind", "--behind-proxy"])
def test_bound_to_loopback_it_is_out_of_reach_for_others(serve, ask, tmp_path, way):
    own = make_pair(tmp_path, [NAME])

    if way == "--bind":
        serve("--cert", own.cert, "--key", own.key, "--bind", "127.0.0.1")
    else:
        serve("--behind-proxy")

    assert "Connection refused" in ask(netns.YARD, own.cert)
