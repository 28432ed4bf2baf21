"""The command line: what each command does, and how it says no."""

import contextlib
import io
import json
import os
import re
import resource
import signal
import socket
import subprocess
import sys
import threading
import time
import urllib.request
from pathlib import Path

import pytest

from server.commands.cli import COMMANDS
from server.commands.cli import main
from server.serving import base_address
from server.storage import DataFolder
from server.storage.folder import keep_setting
from server.words.spoken import say
from tests.ports import free_port

ROOT = Path(__file__).resolve().parents[3]
CASE = {
    "positions": [{"id": "rear-left", "group": "rear"}, {"id": "rear-right", "group": "rear"}],
    "units": [{"id": "A"}, {"id": "B"}],
    "tests": [{"fitted": {"rear-left": "A", "rear-right": "B"}, "faulted": ["rear-left"]}],
}


@pytest.fixture
def port():
    return free_port()


class Running:
    """A command that runs until it is told to end; its output is read as it comes."""

    def __init__(self, arguments, cwd, program=("-m", "server.commands.cli"), before=()):
        self.process = subprocess.Popen(
            [*before, sys.executable, *program, *arguments],
            cwd=cwd,
            env={**os.environ, "PYTHONPATH": str(ROOT)},
            stdout=subprocess.PIPE,
            stderr=subprocess.STDOUT,
            text=True,
        )
        self.lines = []
        self.ended = threading.Event()
        self.reader = threading.Thread(target=self._read)
        self.reader.start()

    def _read(self):
        for line in self.process.stdout:
            self.lines.append(line.rstrip("\n"))
        self.ended.set()

    def wait_for(self, pattern, seconds=90, ask=lambda: None):
        """Returns the first match in the output; calls `ask` while it waits."""
        until = time.monotonic() + seconds
        while time.monotonic() < until:
            ask()
            found = re.search(pattern, "\n".join(self.lines))
            if found:
                return found
            if self.ended.wait(0.05) and not re.search(pattern, "\n".join(self.lines)):
                break
        pytest.fail(f"{pattern} did not come; said: {self.lines}")

    def end(self, how=signal.SIGINT):
        self.process.send_signal(how)
        return self.ends()

    def ends(self):
        """Waits until it ends, and returns how it did."""
        try:
            return self.process.wait(timeout=60)
        finally:
            self.process.kill()
            self.reader.join()
            self.process.stdout.close()


@pytest.fixture
def start(tmp_path):
    started = []

    def run(*arguments, **how):
        started.append(Running(arguments, tmp_path, **how))
        return started[-1]

    yield run
    for running in started:
        if running.process.poll() is None:
            running.end(signal.SIGKILL)


def fetch(url):
    with urllib.request.urlopen(url, timeout=10) as answer:
        return answer.read()


def test_serve_prints_its_address_and_a_link_for_the_first_phone(start, port):
    running = start("serve", "--port", str(port))

    link = running.wait_for(r"http://localhost:\d+/pair#\S+").group(0)
    running.wait_for("Ctrl-C ends it")

    assert link.startswith(f"http://localhost:{port}/")
    assert json.loads(fetch(f"http://localhost:{port}/api/ping"))["ok"] is True
    assert any(set(line) <= set("█▀▄ ") and len(line) > 25 for line in running.lines)
    assert running.end() == 0


@pytest.mark.parametrize("how", [signal.SIGINT, signal.SIGTERM])
def test_serve_ends_quietly_when_told_to(start, port, how):
    running = start("serve", "--port", str(port))
    running.wait_for("Ctrl-C ends it")

    began = time.monotonic()
    assert running.end(how) == 0

    assert time.monotonic() - began < 10
    assert "Traceback" not in "\n".join(running.lines)


_ENDED_WHILE_HANDING_ON = """
import os, signal, sys, threading
from cheroot.workers.threadpool import ThreadPool
from server.commands.cli import main

hand_on = ThreadPool.put

def put(pool, connection):
    os.kill(os.getpid(), signal.SIGINT)
    threading.Event().wait(0.2)
    hand_on(pool, connection)
    print("handed on", flush=True)

ThreadPool.put = put
sys.exit(main(["serve", *sys.argv[1:]]))
"""


def test_ctrl_c_leaves_alone_what_the_server_is_in_the_midst_of(start, port):
    running = start("--port", str(port), program=("-c", _ENDED_WHILE_HANDING_ON))
    running.wait_for("Ctrl-C ends it")

    with contextlib.suppress(OSError):
        fetch(f"http://localhost:{port}/api/ping")
    running.wait_for("handed on")

    assert running.ends() == 0


def test_a_data_folder_keeps_its_address(start, port, tmp_path, capsys):
    first = start("serve", "--data", "shop", "--port", str(port))
    first.wait_for("Ctrl-C ends it")
    first.end()

    again = start("serve", "--data", "shop")
    again.wait_for(f"http://localhost:{port}")
    again.end()
    status = main(["serve", "--data", str(tmp_path / "shop"), "--port", str(port % 60000 + 1)])

    assert status == 2
    assert "stays there: phones keep their unsent work" in capsys.readouterr().err


def test_a_port_that_is_taken_is_said_in_one_line(tmp_path, capsys):
    with socket.socket() as other:
        other.bind(("127.0.0.1", 0))
        other.listen()
        taken = other.getsockname()[1]
        status = main(["serve", "--data", str(tmp_path / "d"), "--port", str(taken)])

    error = capsys.readouterr().err
    assert status == 2
    assert f"Port {taken} is taken" in error
    assert error.count("\n") == 1


@pytest.mark.parametrize("host", ["0.0.0.0", "192.168.1.20", "swaptrail.lan", "::"])
def test_serve_refuses_to_be_half_of_an_app_for_other_machines(tmp_path, capsys, host):
    status = main(["serve", "--data", str(tmp_path / "d"), "--host", host])

    error = capsys.readouterr().err
    assert status == 2
    assert "HTTPS" in error
    assert "Leave out --host" in error
    assert not (tmp_path / "d").exists()


# Storage and permissions belong to the origin, which is scheme, host and port (RFC 6454, section 4).
def test_a_new_data_folder_is_not_tied_to_a_bare_ip(start, port, tmp_path, capsys):
    data = str(tmp_path / "shop")
    for host in ("127.0.0.1", "127.9.9.9", "::1"):
        status = main(["serve", "--data", data, "--host", host, "--port", str(port)])

        error = capsys.readouterr().err
        assert status == 2
        assert f"--host {host} is a bare IP address" in error
        assert "belong to the name" in error
        assert "Take --host localhost" in error
    running = start("serve", "--data", data, "--host", "localhost", "--port", str(port))
    running.wait_for(f"http://localhost:{port}")
    assert running.end() == 0


@pytest.mark.parametrize("given", [[], ["--host", "127.0.0.1"]], ids=["alone", "with its host"])
def test_a_data_folder_that_was_fixed_at_a_bare_ip_goes_on_there(start, port, tmp_path, given):
    folder = DataFolder(tmp_path / "shop")
    folder.prepare()
    with contextlib.closing(folder.open()) as db:
        keep_setting(db, "base_address", f"http://127.0.0.1:{port}")

    running = start("serve", "--data", "shop", *given)

    link = running.wait_for(r"http://\S+/pair#\S+").group(0)
    assert link.startswith(f"http://127.0.0.1:{port}/")
    assert json.loads(fetch(f"http://127.0.0.1:{port}/api/ping"))["ok"] is True


@pytest.mark.parametrize("number", ["0", "-1", "65536"])
def test_a_port_that_is_none_is_refused(tmp_path, capsys, number):
    assert main(["serve", "--data", str(tmp_path / "d"), "--port", number]) == 2
    assert f"--port {number}" in capsys.readouterr().err


@pytest.mark.parametrize("inside", ["", "data"])
def test_a_file_in_the_place_of_the_data_folder_is_named(tmp_path, capsys, inside):
    (tmp_path / "notes.txt").write_text("not a folder")
    where = str(tmp_path / "notes.txt" / inside)

    assert main(["serve", "--data", where]) == 2

    assert capsys.readouterr().err == (
        f"swaptrail: {where} is a file, or lies in one. Name a folder with --data.\n"
    )


@pytest.mark.parametrize(
    ("host", "loopback"),
    [
        ("localhost", True),
        ("127.0.0.1", True),
        ("127.9.9.9", True),
        ("::1", True),
        ("10.0.0.1", False),
        ("0.0.0.0", False),
        ("localhost.example", False),
    ],
)
def test_loopback_is_this_machine_alone(host, loopback):
    assert base_address.is_loopback(host) is loopback


def test_reason_answers_a_case_and_refuses_what_is_none(tmp_path, capsys):
    case = tmp_path / "case.json"
    case.write_text(json.dumps(CASE))

    assert main(["reason", str(case)]) == 0
    answer = json.loads(capsys.readouterr().out)
    assert answer["causes"][0]["cause"] == "unit:A"

    case.write_text("{")
    assert main(["reason", str(case)]) == 2
    printed = capsys.readouterr()
    assert printed.out == ""
    assert printed.err.count("\n") == 1


def test_the_demo_is_ready_soon_and_leaves_nothing(start, port, tmp_path, monkeypatch):
    monkeypatch.setenv("TMPDIR", str(tmp_path))
    running = start("demo", "--port", str(port))

    running.wait_for("Making the demo data")  # before the work, so that nobody waits before nothing
    link = running.wait_for(r"http://localhost:\d+/pair#\S+").group(0)
    running.wait_for("Ctrl-C ends it")

    assert b"<html" in fetch(link.partition("#")[0])
    assert [path.name[:15] for path in tmp_path.iterdir()] == ["swaptrail-demo-"]
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    assert running.end() == 0
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    assert list(tmp_path.iterdir()) == []
    # Time at work, not on the clock: the suite may share the machine.
    seconds = after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime
    assert seconds < 12, f"the demo worked for {seconds:.1f} s"


# A demo that is soon built: the whole one is built above, by the same steps.
_SHORT_DEMO = """
import sys
import demo_db
from server.commands.cli import main

demo_db.build = lambda data, base, **more: ["A hint of the short demo."]
sys.exit(main(["demo", *sys.argv[1:]]))
"""


def test_a_demo_with_a_folder_is_found_again(start, port):
    first = start("--data", "kept", "--port", str(port), program=("-c", _SHORT_DEMO))
    first.wait_for("A hint of the short demo")
    first.wait_for("Ctrl-C ends it")
    first.end()

    again = start("demo", "--data", "kept")
    again.wait_for("used as it was left")

    assert again.end() == 0


def test_the_demo_does_not_touch_real_data(app, folder, phone, capsys):
    phone.record()
    phone.synced()

    assert main(["demo", "--data", str(folder.root)]) == 2
    assert "no demo" in capsys.readouterr().err


@pytest.mark.parametrize("arguments", [[], ["fly"], ["labels"], ["serve", "--nonsense"]])
def test_a_command_that_is_none_is_refused(arguments, capsys):
    with pytest.raises(SystemExit) as ended:
        main(arguments)

    assert ended.value.code == 2
    assert "usage: swaptrail" in capsys.readouterr().err


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        (["fly"], ["fly"]),
        (["serve", "--nonsense"], ["--nonsense"]),
        (["serve", "--port", "x"], ["--port", 'found "x"', "a whole number"]),
        (["serve", "--pair", "boss"], ["--pair", 'found "boss"', "bench or counter"]),
        (["serve", "--port"], ["--port wants a value"]),
        (["serve", "--lan=yes"], ["--lan takes no value"]),
        (["labels", "--again", "9223372036854775808", "--out", "x.pdf"], ["--again", "9223372036854775808"]),
        (["record", "E6D\udcff", "--out", "x.zip"], ["UNIT-OR-JOB", "UTF-8"]),
        (["labels", "--void", "3", "--reason", "\udcff"], ["--reason", "UTF-8"]),
        (["register", "init", "postgresql://\udcff"], ["URL", "UTF-8"]),
        (["labels"], ["--count, --list, --again or --void"]),
        (["labels", "--count", "3", "--list"], ["--list", "--count"]),
        (["site"], ["--out"]),
        (["reason"], ["CASE.json"]),
        (["verify", "a", "b"], ["b"]),
    ],
)
def test_what_is_typed_wrong_is_named_in_one_line(arguments, words, tmp_path, monkeypatch, capsys):
    monkeypatch.chdir(tmp_path)
    with pytest.raises(SystemExit) as ended:
        main(arguments)

    printed = capsys.readouterr()
    assert ended.value.code == 2
    assert printed.out == ""
    assert printed.err.count("\n") == 1
    assert printed.err.startswith("swaptrail: ")
    assert [word for word in words if word not in printed.err] == []
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize(
    "arguments",
    [["--port", "x"], ["--pair", "boss"], ["--port"], ["--lan=yes"], ["left", "over"]],
)
def test_what_is_typed_wrong_is_told_in_the_language_asked_for(arguments, capsys):
    with pytest.raises(SystemExit):
        main(["--language", "es", "serve", *arguments])

    printed = capsys.readouterr().err
    assert re.search("se espera|necesita un valor|no lleva valor|Sobra left over", printed)
    assert "(uso: swaptrail serve " in printed


def test_a_refusal_is_one_line_whatever_was_typed(tmp_path, capsys):
    assert main(["verify", str(tmp_path / "two\nlines")]) == 2

    assert capsys.readouterr().err.count("\n") == 1


def test_a_command_that_is_stopped_is_not_told_as_done(monkeypatch, tmp_path, capsys):
    """A shell goes on behind && after 0 alone: a backup that was stopped would be taken for one."""

    def stopped(*_):
        raise KeyboardInterrupt

    monkeypatch.setattr("server.keeping.backup.run", stopped)

    assert main(["backup", str(tmp_path / "yard.zip"), "--data", str(tmp_path / "data")]) == 130

    assert "Stopped before it was done" in capsys.readouterr().err


def test_a_dash_is_no_file_to_write(app, folder, monkeypatch, tmp_path, capsys):
    monkeypatch.chdir(tmp_path)
    before = set(tmp_path.iterdir())
    for arguments in (["backup", "-"], ["record", "j0", "--out", "-"], ["make-room", "--out", "-"]):
        assert main([*arguments, "--data", str(folder.root)]) == 2
        assert "give it one" in capsys.readouterr().err
    assert main(["site", "--out", "-"]) == 2
    assert set(tmp_path.iterdir()) == before


def test_reason_reads_a_case_from_standard_input(monkeypatch, capsys):
    monkeypatch.setattr("sys.stdin", io.TextIOWrapper(io.BytesIO(json.dumps(CASE).encode())))

    assert main(["reason", "-"]) == 0

    assert json.loads(capsys.readouterr().out)["causes"]


@pytest.mark.parametrize("flag", ["--help", "-h"])
def test_the_help_has_a_line_on_each_command(flag, capsys):
    assert main([flag]) == 0

    lines = capsys.readouterr().out
    for name, what in COMMANDS.items():
        assert re.search(rf"^  {name} +{say(what)[:30]}", lines, re.MULTILINE), name


def test_the_language_is_the_one_asked_for_else_the_machines(monkeypatch, capsys):
    """POSIX (Base Definitions, 8.2): LC_ALL decides before LC_MESSAGES, LC_MESSAGES before LANG."""
    monkeypatch.setenv("LANG", "es_MX.UTF-8")
    with pytest.raises(SystemExit):
        main(["sing"])
    assert "No existe la orden 'sing'" in capsys.readouterr().err

    monkeypatch.setenv("LC_ALL", "C.UTF-8")
    with pytest.raises(SystemExit):
        main(["sing"])
    assert "No such command 'sing'" in capsys.readouterr().err

    assert main(["--language", "es", "labels", "--help"]) == 0
    assert capsys.readouterr().out.startswith("Uso: swaptrail labels ")


def test_the_reasoning_alone_is_told_in_the_language_asked_for(tmp_path, capsys):
    case = tmp_path / "CASE.json"
    case.write_text(json.dumps({"positions": [{"id": "p"}], "tests": [{"fitted": {"p": "A"}}]}), "utf-8")

    assert main(["reason", "--language", "es", str(case)]) == 0

    [retest] = json.loads(capsys.readouterr().out)["next"]
    assert retest["outlook"][0]["then"] == "no se ha visto ningún fallo; si va y viene, prueba otra vez"


@pytest.mark.parametrize("arguments", [["--language", "xx", "labels"], ["reason", "--language", "xx", "a"]])
def test_a_language_that_is_not_there_is_refused(arguments, capsys):
    assert main(arguments) == 2

    assert capsys.readouterr().err == 'swaptrail: --language: found "xx", wanted en or es\n'


@pytest.mark.parametrize("name", COMMANDS)
def test_each_command_says_what_it_does_and_takes(name, capsys):
    assert main([name, "--help"]) == 0

    text = capsys.readouterr().out
    assert text.startswith(f"Usage: swaptrail {name} ")
    assert len(text.split("\n\n")[1].strip()) > 20  # its sentence
    assert re.search(r"^  -h, --help", text, re.MULTILINE)
    assert max(map(len, text.splitlines())) <= 100


def test_every_module_with_a_command_is_in_the_list():
    folder = ROOT / "server" / "commands"
    modules = {file.stem for file in folder.glob("*.py") if "\n@click.command(" in file.read_text("utf-8")}
    assert modules == {name.replace("-", "_") for name in COMMANDS}


def test_a_command_loads_what_it_needs_alone(tmp_path):
    case = tmp_path / "case.json"
    case.write_text(json.dumps(CASE))
    code = (
        "import sys; from server.commands.cli import main; status = main(['reason', sys.argv[1]]);"
        "print(sorted({'flask', 'sqlite_utils', 'cryptography', 'server.app'} & {*sys.modules}));"
        "print(sorted(name for name in sys.modules if name.startswith('server.commands.'))); sys.exit(status)"
    )

    answer = subprocess.run(
        [sys.executable, "-c", code, case],
        env={**os.environ, "PYTHONPATH": str(ROOT)},
        cwd=tmp_path,
        capture_output=True,
        text=True,
        timeout=60,
    )

    assert answer.returncode == 0, answer.stderr
    assert answer.stdout.splitlines()[-2:] == [
        "[]",
        "['server.commands.cli', 'server.commands.options', 'server.commands.reason']",
    ]
