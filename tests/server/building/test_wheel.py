"""The built wheel works from any folder, with nothing of the checkout in sight."""

import json
import os
import re
import shutil
import signal
import subprocess
import sys
import sysconfig
import zipfile
from contextlib import closing
from pathlib import Path

from tests.ports import free_port
from tests.server.serving.connections.client import GET
from tests.server.serving.connections.client import Client

ROOT = Path(__file__).resolve().parents[3]

START = """
import sys
from pathlib import Path
from server.app import Config, create_app
import server
app = create_app(Config(Path("data"), "http://localhost:8765"))
client = app.test_client()
for path in ("/", "/app/main.js", "/app/vendor/zxing-wasm/zxing_reader.wasm", "/app/core.json"):
    answer = client.get(path, base_url="http://localhost:8765")
    assert answer.status_code == 200, path
print(server.__file__)
"""


def run(installed, *arguments, cwd):
    environment = {**os.environ, "PYTHONPATH": str(installed)}
    return subprocess.run(
        [sys.executable, "-P", *arguments],
        cwd=cwd,
        env=environment,
        capture_output=True,
        text=True,
        timeout=60,
        check=False,
    )


def test_the_app_starts_from_another_folder(installed, tmp_path):
    answer = run(installed, "-c", START, cwd=tmp_path)

    assert answer.returncode == 0, answer.stderr
    assert answer.stdout.strip() == str(installed / "server/__init__.py")


def test_the_engine_answers_from_another_folder(installed, tmp_path):
    case = {
        "positions": [{"id": "rear-left", "group": "rear"}, {"id": "rear-right", "group": "rear"}],
        "tests": [{"fitted": {"rear-left": "A", "rear-right": "B"}, "faulted": ["rear-left"]}],
    }

    (tmp_path / "case.json").write_text(json.dumps(case))

    answer = run(installed, "-m", "server.commands.cli", "reason", "case.json", cwd=tmp_path)

    assert answer.returncode == 0, answer.stderr
    assert json.loads(answer.stdout)["causes"][0]["cause"] == "unit:A"


def test_the_wheel_holds_what_is_needed_and_nothing_else(wheel):
    names = zipfile.ZipFile(wheel).namelist()

    folders = {name.split("/")[0] for name in names}
    assert folders == {"server", "demo_db", f"swaptrail-{version()}.dist-info"}
    assert not [name for name in names if "node_modules" in name or "__pycache__" in name]
    assert "server/building/build_hook.py" not in names
    assert not [name for name in names if "server/building" in name or "esbuild" in name]
    assert "server/_static/package.json" not in names
    assert "server/_static/vendor/micropython/micropython.wasm" in names
    assert "server/core/host.py" in names
    assert {"server/serving/lan/page/trust.html", "server/serving/lan/page/pictures/key.svg"} <= set(names)


def test_the_command_is_declared(wheel):
    name = f"swaptrail-{version()}.dist-info/entry_points.txt"

    assert "swaptrail = server.commands.cli:main" in zipfile.ZipFile(wheel).read(name).decode()


def test_the_files_for_running_it_as_a_service_are_in_the_wheel(wheel):
    names = set(zipfile.ZipFile(wheel).namelist())

    assert {f"server/deploy/{name}" for name in ("swaptrail.service", "Containerfile", "nginx.conf")} <= names


def test_what_the_containerfile_runs_installs_the_wheel_and_starts_it(wheel, tmp_path):
    """Its own commands, in an environment in place of an image; the one that adds a user is left out.

    The packages that the wheel needs come from the environment of the tests, not from an index.
    """
    steps = containerfile()
    environment = tmp_path / "environment"
    subprocess.run([sys.executable, "-m", "venv", environment], check=True, timeout=180)
    (tmp_path / "tmp").mkdir()
    shutil.copy(wheel, tmp_path / "tmp")
    variables = {
        **os.environ,
        "PATH": f"{environment}/bin:{os.environ['PATH']}",
        "PIP_NO_DEPS": "1",
        "PIP_NO_INDEX": "1",
        "PYTHONPATH": sysconfig.get_path("purelib"),
    }
    install, add_user = (value for name, value in steps if name == "RUN")
    assert add_user.startswith("useradd --system --uid ")
    command = install.replace("/tmp/", f"{tmp_path}/tmp/")
    subprocess.run(
        command, shell=True, env=variables, cwd=tmp_path, check=True, capture_output=True, timeout=180
    )
    assert list((tmp_path / "tmp").iterdir()) == []

    entry = json.loads(dict(steps)["ENTRYPOINT"])
    port = free_port()
    ours = {"/data": str(tmp_path / "data"), "0.0.0.0": "127.0.0.1"}
    process = subprocess.Popen(
        [*(ours.get(word, word) for word in entry), "--host", "shop.example", "--port", str(port)],
        env=variables, cwd=tmp_path, stdout=subprocess.PIPE, text=True,
    )  # fmt: skip
    try:
        assert any("Ctrl-C ends it" in line for line in process.stdout)
        with closing(Client(port)) as client:
            assert client.ask(GET).status == 400, "as it did not come by the proxy"
        process.send_signal(getattr(signal, dict(steps)["STOPSIGNAL"]))
        assert process.wait(timeout=30) == 0
    finally:
        process.kill()
        process.wait()
        process.stdout.close()


def containerfile():
    """Returns its instructions, each a name and what stands behind it."""
    text = (ROOT / "server" / "deploy" / "Containerfile").read_text("utf-8")
    lines = [line for line in text.splitlines() if line and not line.startswith("#")]
    steps = [tuple(line.split(" ", 1)) for line in lines]
    assert ("USER", "swaptrail") in steps
    return steps


def version():
    return re.search(r'^version = "(.*)"', (ROOT / "pyproject.toml").read_text(), re.MULTILINE).group(1)
