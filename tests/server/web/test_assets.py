"""The phone app as it is served: whole, checkable, compressed, and one build at a time."""

import base64
import gzip
import hashlib
import json
import re
from pathlib import Path
from urllib.parse import urljoin

import pytest

from server.app import Config
from server.app import create_app
from server.web import shell
from server.words.files import languages
from tests.server.phone import BASE
from tests.server.phone import Phone
from tests.server.phone import assert_refused

ROOT = Path(__file__).resolve().parents[3]
IMPORTED = re.compile(r"""(?:^import|\bfrom) *['"]([./a-z][\w./-]*)['"]""", re.MULTILINE)


def page_of(phone):
    """The app's page, with the plain address of each file in place of the one that names the build."""
    return phone.get("/").get_data(as_text=True).replace(f"/app/{precache(phone)['build']}/", "/app/")


def precache(phone, language="en"):
    """What a phone of this language keeps."""
    source = phone.get("/sw.js").get_data(as_text=True)
    listed = json.loads(re.search(r"JSON\.parse\('(.*?)'\)", source).group(1))
    kept = listed["files"] + listed["late"] + listed["languages"][language]
    return {**listed, "files": [{**file, "url": urljoin("/sw.js", file["url"])} for file in kept]}


@pytest.fixture(scope="module")
def real_app(tmp_path_factory):
    """The app as it stands in this checkout."""
    return create_app(Config(tmp_path_factory.mktemp("real"), BASE))


@pytest.fixture
def visitor(real_app):
    return Phone(real_app)


def test_every_file_on_the_list_is_served_with_its_hash(visitor):
    files = precache(visitor)["files"]

    for file in files:
        answer = visitor.get(file["url"])
        assert answer.status_code == 200
        assert hashlib.sha256(answer.data).hexdigest() == file["sha256"], file["url"]
        assert not answer.history


def test_the_list_holds_the_whole_app(visitor):
    urls = {file["url"] for language in languages() for file in precache(visitor, language)["files"]}
    static = ROOT / "static"
    on_disk = {
        f"/app/{file.relative_to(static).as_posix()}"
        for pattern in ("*.js", "*.mjs", "*.css", "*.svg", "*.png", "*.webp", "*.wasm")
        for file in static.rglob(pattern)
        if "node_modules" not in file.parts and file.name != "sw.js"
    }

    said = {url.format(each) for url in (shell.WORDS_URL, shell.HELP_URL) for each in languages()}
    whole = on_disk | said | {"/", "/plain.html", "/app/core.json", "/manifest.webmanifest"}
    assert whole > shell.NOT_KEPT
    assert urls == whole - shell.NOT_KEPT


def test_a_phone_keeps_of_the_languages_its_own_alone(visitor):
    kept = {file["url"] for file in precache(visitor, "es")["files"]}

    assert {"/app/words/es.ftl", "/app/help/es.json"} <= kept
    assert not {"/app/words/en.ftl", "/app/help/en.json"} & kept


def test_every_module_that_is_imported_is_on_the_list(visitor):
    urls = {file["url"] for file in precache(visitor)["files"]}
    page = page_of(visitor)
    names = json.loads(re.search(r'importmap">(.*?)</script>', page, re.DOTALL).group(1))["imports"]
    scripts = [url for url in urls if url.endswith((".js", ".mjs"))]

    for url in scripts:
        source = visitor.get(url).get_data(as_text=True)
        for name in IMPORTED.findall(source):
            assert resolved(name, url, names) in urls, f"{url} imports {name}"


def resolved(name, url, names):
    if name.startswith("."):
        parts = [*url.split("/")[:-1]]
        for step in name.split("/"):
            parts = parts[:-1] if step == ".." else parts if step == "." else [*parts, step]
        return "/".join(parts)
    if name in names:
        return names[name]
    prefix = max((key for key in names if key.endswith("/") and name.startswith(key)), default="")
    return names[prefix] + name[len(prefix) :] if prefix else name


def test_no_script_names_a_file_without_its_build():
    static = ROOT / "static"
    scripts = [
        file
        for file in static.rglob("*.js")
        if not {"node_modules", "vendor"} & set(file.parts) and file.name != "sw.js"
    ]

    named = [file.name for file in scripts if re.search(r"""['"`]/app/""", file.read_text("utf-8"))]

    assert scripts
    assert named == []


def test_every_address_in_the_page_and_the_manifest_is_on_the_list(visitor):
    urls = {file["url"] for file in precache(visitor)["files"]} | shell.NOT_KEPT
    page = page_of(visitor)
    manifest = json.loads(visitor.get("/manifest.webmanifest").data)

    named = set(re.findall(r'(?:href|src)="(/[^"]+)"', page))
    named |= {urljoin("/manifest.webmanifest", icon["src"]) for icon in manifest["icons"]}

    assert named <= urls


def test_the_core_is_sent_as_the_files_it_is(visitor):
    files = visitor.get("/app/core.json").get_json()["files"]

    package = ROOT / "server"
    names = {f"server/{file.relative_to(package).as_posix()}" for file in (package / "core").rglob("*.py")}
    assert set(files) == names | {"server/__init__.py"}
    assert files["server/core/host.py"] == (package / "core/host.py").read_text("utf-8")


def test_the_policy_names_the_import_map_as_it_stands_in_the_page(visitor):
    answer = visitor.get("/")
    script = re.search(rb'<script type="importmap">(.*?)</script>', answer.data, re.DOTALL).group(1)
    digest = base64.b64encode(hashlib.sha256(script).digest()).decode()

    assert f"'sha256-{digest}'" in answer.headers["Content-Security-Policy"]


def test_the_reader_has_the_wasm_that_its_script_wants(visitor):
    script = visitor.get("/app/vendor/barcode-detector/zxing-exported.js").get_data(as_text=True)
    wasm = visitor.get("/app/vendor/zxing-wasm/zxing_reader.wasm").data

    assert hashlib.sha256(wasm).hexdigest() in script


@pytest.mark.parametrize("path", ["/", "/pair", "/U/K7F3M", "/u/k7f-3m", "/job/j00000000000a", "/job/a/b"])
def test_every_route_of_the_app_is_its_one_page_without_a_redirect(stranger, path):
    answer = stranger.get(path)

    assert answer.status_code == 200
    assert answer.mimetype == "text/html"
    assert answer.data == stranger.get("/").data


@pytest.mark.parametrize(
    ("path", "content_type"),
    [
        ("/", "text/html; charset=utf-8"),
        ("/sw.js", "text/javascript; charset=utf-8"),
        ("/app/main.js", "text/javascript; charset=utf-8"),
        ("/app/styles/base.css", "text/css; charset=utf-8"),
        ("/app/icons/app.svg", "image/svg+xml"),
        ("/app/core.json", "application/json"),
        ("/app/vendor/micropython/micropython.wasm", "application/wasm"),
        ("/manifest.webmanifest", "application/manifest+json"),
    ],
)
def test_each_file_says_what_it_is(stranger, path, content_type):
    assert stranger.get(path).headers["Content-Type"] == content_type


@pytest.mark.parametrize(
    "path",
    [
        "package.json",
        "index.html",
        "sw.js",
        "node_modules/idb/index.js",
        "vendor/lit-html/LICENSE",
        "../pyproject.toml",
        "%2e%2e/pyproject.toml",
    ],
)
def test_what_is_no_part_of_the_app_is_not_served(stranger, path):
    assert stranger.get(f"/app/{path}").status_code == 404


def test_files_travel_compressed_where_the_phone_takes_it(stranger):
    plain = stranger.get("/app/styles/base.css")
    packed = stranger.get("/app/styles/base.css", headers={"Accept-Encoding": "gzip"})

    assert packed.headers["Content-Encoding"] == "gzip"
    assert gzip.decompress(packed.data) == plain.data
    assert len(packed.data) < len(plain.data)
    assert "Accept-Encoding" in packed.headers["Vary"]
    assert packed.headers["ETag"] != plain.headers["ETag"]


def test_an_unchanged_file_is_not_sent_again(stranger):
    tag = stranger.get("/app/main.js").headers["ETag"]

    answer = stranger.get("/app/main.js", headers={"If-None-Match": tag})

    assert answer.status_code == 304
    assert answer.data == b""


def test_a_file_is_kept_for_long_only_at_the_address_of_its_build(stranger):
    build = precache(stranger)["build"]

    kept = stranger.get(f"/app/{build}/main.js")

    assert "immutable" in kept.headers["Cache-Control"]
    assert kept.data == stranger.get("/app/main.js").data
    assert stranger.get("/app/main.js").headers["Cache-Control"] == "no-cache"


def test_a_page_never_gets_a_file_of_another_build(stranger):
    build = precache(stranger)["build"]

    assert f'src="/app/{build}/main.js"' in stranger.get("/").get_data(as_text=True)
    assert stranger.get(f"/app/{build[::-1]}/main.js").status_code == 404


def test_page_and_service_worker_are_asked_for_every_time(stranger):
    assert stranger.get("/").headers["Cache-Control"] == "no-cache"
    assert stranger.get("/sw.js").headers["Cache-Control"] == "no-cache"


def test_the_build_changes_with_any_file_and_with_nothing_else(small_static):
    first = shell.load_shell(small_static)
    again = shell.load_shell(small_static)
    (small_static / "styles/base.css").write_text("body {}")
    changed = shell.load_shell(small_static)
    (small_static / "sw.js").write_text("JSON.parse('__PRECACHE__'); // new")

    assert first.build == again.build
    assert len({first.build, changed.build, shell.load_shell(small_static).build}) == 3


def test_files_that_change_on_disk_do_not_change_a_running_server(stranger, small_static):
    before = stranger.get("/app/main.js").data
    (small_static / "main.js").write_text("broken half of a new build")

    assert stranger.get("/app/main.js").data == before


def test_an_app_that_was_not_built_is_refused_with_what_to_do(small_static):
    (small_static / "vendor/micropython/micropython.wasm").unlink()

    with pytest.raises(shell.ShellIncomplete, match="Install the project again"):
        shell.load_shell(small_static)


def test_a_worker_without_its_place_for_the_list_is_refused(small_static):
    (small_static / "sw.js").write_text("// nothing")

    with pytest.raises(shell.ShellIncomplete, match="exactly once"):
        shell.load_shell(small_static)


def test_a_stranger_may_fetch_the_app_but_nothing_else(stranger):
    assert stranger.get("/app/main.js").status_code == 200
    assert_refused(stranger.get("/api/jobs"), 401, "session")


@pytest.mark.parametrize("origin", [None, "null", "https://other.example"])
def test_shared_pictures_that_no_worker_took_lead_to_the_app_and_are_not_read(app, origin):
    headers = {"Origin": origin} if origin else {}
    answer = app.test_client().post(
        "/share",
        base_url=BASE,
        headers=headers,
        content_type="multipart/form-data; boundary=b",
        data=b"--b\r\n" + b"x" * 6_000_000,
    )
    assert answer.status_code == 303
    assert answer.headers["Location"] == "./#/shared/missed"
