"""The app as files on a plain host, at its root and in a folder: offline, never two builds at once."""

import shutil

import pytest

from server.site.make import write
from server.web.shell import find_static
from tests.browser_support import Complaints
from tests.browser_support import wait_until
from tests.static.builds import STYLE
from tests.static.builds import WHOLE
from tests.static.builds import mark_build
from tests.static.builds import wait_for_app
from tests.static.file_host import FileHost
from tests.wheels import served_app

SCREENS = ["", "#/new", "#/you", "#/find", "#/outbox", "#/labels", "#/labels/print", "#/record", "#/help"]
UPDATES = "navigator.serviceWorker.getRegistration().then((r) => r.update()).then(() => true, () => false)"
WAITING = "navigator.serviceWorker.getRegistration().then((r) => Boolean(r.waiting))"
# The screen of the address, after the one that stood there or the picture of what it showed last.
DRAWN_ANEW = """() => {
  const main = document.querySelector('#app:not([inert]) main');
  return Boolean(main) && main !== globalThis.before;
}"""
LOADED = "performance.getEntriesByType('resource').map(({ name }) => name)"
KEPT = """async () => ({
  caches: await caches.keys(),
  databases: (await indexedDB.databases()).map(({ name }) => name),
  settings: Object.keys(localStorage),
})"""


@pytest.fixture
def make_host():
    """Give a maker of hosts; each ends with the test."""
    hosts = []

    def make(*args, **options):
        hosts.append(FileHost(*args, **options))
        return hosts[-1]

    yield make
    for host in hosts:
        host.close()


@pytest.fixture
def static(tmp_path):
    """Give an app whose builds can be told apart; the first is called `first`."""
    kept = shutil.ignore_patterns("node_modules", "esbuild")
    static = shutil.copytree(served_app(), tmp_path / "static", ignore=kept)
    mark_build(static, "first")
    return static


def visit(context, host, complaints=None):
    """Open the site and wait until it is on the phone."""
    page = context.new_page()
    if complaints:
        complaints.listen(page)
    page.goto(host.base)
    wait_until(page, "navigator.serviceWorker.controller !== null", seconds=60)
    wait_for_app(page)
    return page


@pytest.mark.parametrize(
    ("prefix", "source"),
    [
        pytest.param("/", "wheel", id="at the root, from the wheel"),
        pytest.param("/a/b/", "wheel", id="in a folder, from the wheel"),
        pytest.param("/a/b/", "checkout", id="in a folder, from the checkout"),
    ],
)
def test_the_site_runs_offline_on_a_plain_host(prefix, source, request, context, make_host, tmp_path):
    static = served_app() if source == "wheel" else find_static()
    write(static, tmp_path / "site")
    host = make_host(tmp_path / "site", prefix)
    complaints = Complaints(host.base)
    page = visit(context, host, complaints)
    if source == "wheel":
        wait_until(page, WHOLE, seconds=30)  # what comes late must not come while it is tried without
    manifest = context.new_cdp_session(page).send("Page.getAppManifest")
    assert manifest["errors"] == []
    assert context.new_cdp_session(page).send("Page.getAppId")["appId"] == host.base
    page.close()

    context.set_offline(True)
    asked = len(host.paths)
    page = complaints.listen(context.new_page())
    for screen in SCREENS:
        page.evaluate("() => { globalThis.before = document.querySelector('main'); }")
        page.goto(host.base + screen)
        wait_until(page, DRAWN_ANEW, seconds=30)
        assert page.locator("main").inner_text().strip(), screen
        assert "went wrong" not in page.locator("main").inner_text(), screen
    page.close()
    page = complaints.listen(context.new_page())
    page.goto(f"{host.base}u/K7F3M")
    wait_until(page, f"location.href === '{host.base}#/code/K7F3M'")
    page.locator("#app main").wait_for()

    assert complaints.heard == []
    assert set(host.paths[asked:]) <= {f"{prefix}sw.js"}
    assert not [path for path in host.paths if not path.startswith(prefix) or "/api/" in path]


def test_a_label_opens_the_site_that_is_not_yet_on_the_phone(context, make_host, tmp_path):
    write(served_app(), tmp_path / "site")
    host = make_host(tmp_path / "site", "/a/b/")
    page = context.new_page()

    page.goto(f"{host.base}U/K7F3M")

    wait_until(page, f"location.href === '{host.base}#/code/K7F3M'", seconds=30)
    wait_for_app(page)


def test_a_host_that_shortens_addresses_serves_it_too(context, make_host, tmp_path):
    """Hosts of files send pages on to the address without .html; their bytes are the same."""
    write(served_app(), tmp_path / "site")
    host = make_host(tmp_path / "site", short=True)
    page = visit(context, host)
    assert any(path.endswith("/404.html") for path in host.paths)
    page.close()

    context.set_offline(True)
    page = context.new_page()
    page.goto(host.base)
    wait_for_app(page)


@pytest.mark.parametrize("path", ["/u/ABCDE", "/pair"])
def test_an_address_with_another_host_in_its_path_stays_on_this_one(path, context, make_host, tmp_path):
    write(served_app(), tmp_path / "site")
    host = make_host(tmp_path / "site")
    other = make_host(tmp_path / "site")
    page = context.new_page()

    page.goto(f"{host.origin}//{other.base.partition('//')[2].rstrip('/')}{path}")

    wait_until(page, "location.hash !== ''", seconds=30)
    assert page.evaluate("location.origin") == host.origin
    assert other.paths == []


def test_two_sites_of_one_host_keep_apart(context, make_host, tmp_path):
    (tmp_path / "host").mkdir()
    for name in ("one", "two"):
        write(served_app(), tmp_path / "host" / name)
    host = make_host(tmp_path / "host")
    for name in ("one", "two"):
        host.base = f"{host.origin}/{name}/"
        page = visit(context, host)

    kept = page.evaluate(KEPT)

    for names in kept.values():
        assert {name.split(" ")[0] for name in names} == {"/one/", "/two/"}, kept
    assert len(kept["databases"]) == 2


def test_an_update_works_where_the_host_lets_stale_copies_live(static, context, make_host, tmp_path):
    write(static, tmp_path / "site")
    host = make_host(tmp_path / "site", "/a/b/", max_age=600)
    page = visit(context, host)
    mark_build(static, "second")
    assert "took the place" in write(static, tmp_path / "site")

    page.evaluate(UPDATES)
    wait_until(page, WAITING, seconds=60)
    assert page.evaluate(STYLE) == "first"
    page.close()
    page = context.new_page()
    for _ in range(20):  # the browser changes workers a moment after the last page is gone
        page.goto(host.base)
        if page.evaluate(STYLE) == "second":
            break
        page.close()
        page = context.new_page()
        page.wait_for_timeout(300)

    assert page.evaluate(STYLE) == "second"
    wait_for_app(page)
    folders = {name.split("/app/")[1].split("/")[0] for name in page.evaluate(LOADED) if "/app/" in name}
    assert len(folders) == 1


def test_a_page_that_lags_behind_its_worker_is_not_taken(static, context, make_host, tmp_path):
    write(static, tmp_path / "site")
    host = make_host(tmp_path / "site", "/a/b/", max_age=600)
    old_page = (tmp_path / "site/index.html").read_bytes()
    page = visit(context, host)
    mark_build(static, "second")
    write(static, tmp_path / "site")
    host.stale["index.html"] = old_page

    page.evaluate(UPDATES)
    wait_until(page, "navigator.serviceWorker.getRegistration().then((r) => !r.installing)", seconds=60)
    assert page.evaluate(WAITING) is False
    page.reload()
    wait_for_app(page)
    assert page.evaluate(STYLE) == "first"

    host.stale.clear()
    page.evaluate(UPDATES)
    wait_until(page, WAITING, seconds=60)
