"""The built wheel works from any folder, with nothing of the checkout in sight."""

import json
import os
import re
import subprocess
import sys
import zipfile
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]

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

    answer = run(installed, "-m", "server.cli", "reason", "case.json", cwd=tmp_path)

    assert answer.returncode == 0, answer.stderr
    assert json.loads(answer.stdout)["causes"][0]["cause"] == "unit:A"


def test_the_wheel_holds_what_is_needed_and_nothing_else(wheel):
    names = zipfile.ZipFile(wheel).namelist()

    folders = {name.split("/")[0] for name in names}
    assert folders == {"server", "demo_db", f"swaptrail-{version()}.dist-info"}
    assert not [name for name in names if "node_modules" in name or "__pycache__" in name]
    assert "server/build_hook.py" not in names
    assert not [name for name in names if "server/building" in name or "esbuild" in name]
    assert "server/_static/package.json" not in names
    assert "server/_static/vendor/micropython/micropython.wasm" in names
    assert "server/core/host.py" in names


def test_the_command_is_declared(wheel):
    name = f"swaptrail-{version()}.dist-info/entry_points.txt"

    assert "swaptrail = server.cli:main" in zipfile.ZipFile(wheel).read(name).decode()


def version():
    return re.search(r'^version = "(.*)"', (ROOT / "pyproject.toml").read_text(), re.MULTILINE).group(1)
