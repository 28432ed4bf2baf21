"""The app as a wheel brings it: few files, small, each with its Brotli copy, and the same core in them."""

import re
from pathlib import Path
from urllib.parse import urljoin

import brotli
import pytest

from server.app import Config
from server.app import create_app
from server.web.core_files import core_files
from server.web.shell import NOT_KEPT
from tests.server.phone import BASE
from tests.server.phone import Phone
from tests.server.web.test_assets import page_of
from tests.server.web.test_assets import precache

MOST_FILES = 33
MOST_BYTES = 900_000
IMPORTED_AT_ONCE = re.compile(r"""(?:\bfrom|\bimport) *"(\./[^"]+)\"""")
IMPORTED = re.compile(r"""(?:\bfrom|\bimport\(?) *"(\./[^"]+)\"""")


@pytest.fixture(scope="module")
def static(installed) -> Path:
    return installed / "server/_static"


@pytest.fixture(scope="module")
def built(static, tmp_path_factory):
    return create_app(Config(tmp_path_factory.mktemp("built"), BASE, static))


@pytest.fixture
def visitor(built):
    return Phone(built)


def listed(visitor) -> set[str]:
    return {file["url"] for file in precache(visitor)["files"]}


def test_a_first_visit_is_few_files_and_few_bytes(built, visitor):
    """900 kB and 40 requests are the bound of a visit; head lines and answers come on top.

    The bytes are those before it works offline; all files are in the number.
    """
    sizes = {url: len(built.extensions["shell"].assets[url].brotli or b"") for url in listed(visitor)}

    assert len(listed(visitor)) <= MOST_FILES
    assert built.extensions["shell"].precached_bytes() < MOST_BYTES, sizes


def test_only_what_nothing_asks_for_at_once_may_come_late(built, visitor):
    late = set(built.extensions["shell"].late)
    first = listed(visitor) - late
    at_once = {
        urljoin(url, name)
        for url in first
        if url.endswith(".js")
        for name in IMPORTED_AT_ONCE.findall(visitor.get(url).get_data(as_text=True))
    }

    assert late < listed(visitor)
    assert at_once
    assert at_once <= first


def test_whatever_the_page_and_its_scripts_ask_for_is_on_the_list(visitor):
    named = set(re.findall(r'(?:href|src)="(/[^"]+)"', page_of(visitor)))
    scripts = sorted(url for url in listed(visitor) if url.endswith(".js"))
    for url in scripts:
        for name in IMPORTED.findall(visitor.get(url).get_data(as_text=True)):
            named.add(f"{url.rpartition('/')[0]}/{name.removeprefix('./')}")

    assert named <= listed(visitor) | NOT_KEPT
    assert {"/app/main.js", "/app/styles/app.css", "/app/core.json"} <= named
    assert {"/app/core/worker.js", "/app/scan/decoding/code-worker.js"} <= listed(visitor)


def test_the_page_runs_no_inline_script(visitor):
    assert "importmap" not in page_of(visitor)
    assert "sha256-" not in visitor.get("/").headers["Content-Security-Policy"]


@pytest.mark.parametrize("name", ["core/worker.js", "core.json", "vendor/zxing-wasm/zxing_reader.wasm"])
def test_brotli_goes_to_who_takes_it(visitor, name):
    plain = visitor.get(f"/app/{name}", headers={"Accept-Encoding": "identity"})
    packed = visitor.get(f"/app/{name}", headers={"Accept-Encoding": "gzip, deflate, br"})
    older = visitor.get(f"/app/{name}", headers={"Accept-Encoding": "gzip, br;q=0"})

    assert packed.headers["Content-Encoding"] == "br"
    assert older.headers["Content-Encoding"] == "gzip"
    assert "Content-Encoding" not in plain.headers
    assert brotli.decompress(packed.data) == plain.data
    assert len(packed.data) < len(older.data) < len(plain.data)
    assert {answer.headers["Vary"] for answer in (plain, packed, older)} == {"Accept-Encoding"}
    assert len({answer.headers["ETag"] for answer in (plain, packed, older)}) == 3


def test_a_tag_of_one_encoding_is_no_tag_of_another(visitor):
    packed = visitor.get("/app/core/worker.js", headers={"Accept-Encoding": "br"})
    tag = {"If-None-Match": packed.headers["ETag"]}

    again = visitor.get("/app/core/worker.js", headers={"Accept-Encoding": "br", **tag})
    other = visitor.get("/app/core/worker.js", headers={"Accept-Encoding": "gzip", **tag})

    assert (again.status_code, again.data) == (304, b"")
    assert other.status_code == 200


def test_no_brotli_copy_is_a_file_of_the_app(visitor):
    assert not [url for url in listed(visitor) if url.endswith(".br")]
    assert visitor.get("/app/core/worker.js.br").status_code == 404


def test_the_core_is_all_there_and_compiled(visitor):
    core = visitor.get("/app/core.json").get_json()

    assert sorted(name.removesuffix(".mpy") for name in [*core["files"], *core["late"]]) == sorted(
        name.removesuffix(".py") for name in core_files()
    )
    assert all(name.endswith(".mpy") for name in [*core["files"], *core["late"]])


def test_what_of_the_core_only_some_answers_need_comes_late(built, visitor):
    core = visitor.get("/app/core.json").get_json()

    assert {"server/core/printing/drawing.mpy", "server/core/record/file.mpy"} <= set(core["late"])
    assert {"server/core/host.mpy", "server/core/infer/belief.mpy"} <= set(core["files"])
    assert "/app/core-late.bin" in built.extensions["shell"].late
    assert len(visitor.get("/app/core-late.bin").data) == sum(core["late"].values())


def test_the_licences_of_what_is_bundled_come_along(static):
    bundled = "".join(file.read_text("utf-8") for file in static.glob("*.js"))

    assert "SPDX-License-Identifier: BSD-3-Clause" in bundled
    licences = {file.parent.name for file in static.glob("vendor/*/LICENSE")}
    assert licences == {
        "barcode-detector",
        "canonicalize",
        "fflate",
        "idb",
        "lean-qr",
        "lit-html",
        "zxing-wasm",
    }
