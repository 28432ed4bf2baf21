"""A build has what pyproject.toml asks for to build, and none of what the app needs to run."""

import subprocess
import sys
import tomllib

from tests.wheels import ROOT

# Refuses every package from elsewhere but those that a build may ask for.
_BARE = """
import sys
from pathlib import Path


class Refused:
    def find_spec(self, name, path=None, target=None):
        if name.partition(".")[0] in refused:
            raise ModuleNotFoundError(f"a build has no {name}")


refused = set(sys.argv[2].split())
sys.meta_path.insert(0, Refused())
import server.building

server.building.built_app(Path("static").resolve(), Path(sys.argv[1]))
"""


def test_the_app_is_built_without_what_only_running_it_needs(tmp_path):
    needs = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))["project"]["dependencies"]
    assert "fluent.runtime" in " ".join(needs)
    packages = "cheroot click cryptography flask flask_wtf fluent markdown_it qrcode sqlite_utils wtforms"

    made = subprocess.run(
        [sys.executable, "-c", _BARE, tmp_path / "app", packages],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=False,
    )

    assert made.returncode == 0, made.stderr
    assert (tmp_path / "app" / "main.js").is_file()
