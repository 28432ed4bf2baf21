"""Makes the phone app as an installed server sends it; part of the build, not of the wheel.

    bundle    modules and styles joined into few files, by esbuild
    compiled  the core's Python files compiled for the phone's host, by mpy-cross
    packed    a Brotli copy beside each file

`built_app` does all three. A checkout needs none of them: it serves static/ as it is.
"""

import shutil
from pathlib import Path

from server.building.bundle import CORE_BYTES
from server.building.bundle import LATE_CORE_BYTES
from server.building.bundle import bundle
from server.building.bundle import small_worker
from server.building.compiled import compiled_core
from server.building.packed import pack
from server.words.files import languages
from server.words.files import sent_source_of

# Sent as they are; everything else under static/ goes into the bundle or stays behind.
_TAKEN = ("help", "icons", "vendor/micropython/micropython.wasm", "vendor/zxing-wasm/zxing_reader.wasm")
_BESIDE = ("manifest.webmanifest", "sw-retire.js")
_WORKER = "sw.js"


def built_app(static: Path, out: Path) -> None:
    """Writes the built app into the folder `out`, which must not hold anything yet."""
    core = compiled_core()
    bundle(static, out, is_compiled=core is not None)
    for name in (*_TAKEN, *_BESIDE):
        source, target = static / name, out / name
        target.parent.mkdir(parents=True, exist_ok=True)
        if source.is_dir():
            shutil.copytree(source, target)
        else:
            shutil.copyfile(source, target)
    (out / _WORKER).write_text(small_worker(static, _WORKER), "utf-8")
    for licence in static.glob("vendor/*/LICENSE"):
        target = out / licence.relative_to(static)
        target.parent.mkdir(parents=True, exist_ok=True)
        shutil.copyfile(licence, target)
    if core is not None:
        (out / "core.json").write_bytes(core.table)
        (out / CORE_BYTES).write_bytes(core.first)
        (out / LATE_CORE_BYTES).write_bytes(core.late)
    words = out / "words"
    words.mkdir()
    for language in languages():
        (words / f"{language}.ftl").write_bytes(sent_source_of(language))
    pack(out)
