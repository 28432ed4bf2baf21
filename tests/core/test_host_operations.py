"""Every operation of the host has a caller: one that nobody asks for is dead code on every phone."""

import re
from pathlib import Path

from server.core.host import Host

ROOT = Path(__file__).resolve().parents[2]
CALLERS = (("static", "*.js"), ("server", "*.py"), ("demo_db", "*.py"), ("tests", "*.py"))
LEFT_OUT = ("static/vendor/", "static/node_modules/", "server/core/")


def test_every_operation_of_the_host_is_asked_for():
    texts = [
        file.read_text("utf-8")
        for folder, pattern in CALLERS
        for file in (ROOT / folder).rglob(pattern)
        if not file.relative_to(ROOT).as_posix().startswith(LEFT_OUT)
    ]
    named = set(re.findall(r"""["'](\w+)["']""", "\n".join(texts)))
    operations = {name.removeprefix("op_") for name in dir(Host) if name.startswith("op_")}

    assert len(operations) > 20
    assert operations - named == set()
