"""After the first visit the app starts with no network; a build is taken whole or not, and on a tap."""

import shutil
import threading

from tests.browser_support import Complaints
from tests.browser_support import wait_until
from tests.static.builds import STYLE
from tests.static.builds import WHOLE
from tests.static.builds import first_visit
from tests.static.builds import late_script
from tests.static.builds import style_of
from tests.static.builds import wait_for_app

ROUTES = ["/", "/pair", "/U/K7F3M", "/u/k7f3m", "/job/j0123456789ab", "/job/j0123456789ab/trail"]

# Beside the page's own, and of the same build.
UPDATE = """async () => {
  const { Update } = await import(new URL('parts.js', document.querySelector('script[src]').src));
  window.update = new Update();
  await update.start();
}"""

BUILDS = "caches.keys().then((all) => all.filter((name) => name.startsWith('swaptrail-build-')))"
BUSY = """() => {
  setInterval(() => { for (let i = 0; i < 4; i += 1) fetch('/app/main.js').then((r) => r.text()); }, 20);
}"""


def has_new_build(page, server, name):
    """Serve a new build and wait until it is on the phone; `update` is the page's then."""
    page.evaluate(UPDATE)
    server.new_build(name)
    page.evaluate("update.check()")
    wait_until(page, "update.ready.value", seconds=30)


def wait_for_request(page, server, ending):
    """Wait until the server was asked for a path that ends so."""
    while not any(path.endswith(ending) for path in server.paths()):
        page.wait_for_timeout(30)


def change_over(page):
    """Tap on the new version and wait for its screens."""
    with page.expect_event("load"):
        page.evaluate("void update.apply()")
    wait_for_app(page)


def is_nothing_of_the_server_kept(page):
    """Hold what is kept to the app's own files: no answer of the server is among them."""
    page.evaluate("fetch('/api/ping')")
    kept = page.evaluate(
        """async () => {
          const [name] = (await caches.keys()).filter((one) => one.startsWith('swaptrail-build-'));
          const requests = await (await caches.open(name)).keys();
          return requests.map(({ url }) => new URL(url).pathname);
        }"""
    )

    assert not [path for path in kept if path.startswith("/api")]
    assert set(kept) == {
        "/",
        "/manifest.webmanifest",
        "/plain.html",
        *(path for path in kept if path.startswith("/app/")),
    }
    assert {"/app/core.json", "/app/vendor/micropython/micropython.wasm"} < set(kept)


def test_every_route_starts_with_no_network_after_the_first_visit(context, shared_app):
    complaints = Complaints(shared_app.base)
    # What the first visit itself asks must not be counted as asked without a network.
    with context.expect_event("response", lambda answer: answer.url.endswith("/api/session")):
        page = first_visit(context, shared_app, complaints)
    is_nothing_of_the_server_kept(page)
    page.close()
    context.set_offline(True)
    shared_app.requests.clear()

    for route in ROUTES:
        page = complaints.listen(context.new_page())
        failed = []
        page.on("requestfailed", lambda request, failed=failed: failed.append(request.url))
        page.goto(shared_app.base + route)
        wait_for_app(page)
        assert failed == [], route
        page.close()

    assert complaints.heard == []
    # the browser itself looks for a newer worker, whatever the page's network is set to
    assert set(shared_app.paths()) <= {"/sw.js"}


def test_core_and_scanner_run_with_no_network(context, checkout_app):
    first_visit(context, checkout_app).close()
    context.set_offline(True)
    page = context.new_page()
    page.goto(checkout_app.base)

    answer = page.evaluate(
        """async () => {
          const { Core } = await import('/app/core/client.js');
          const core = await Core.start();
          const { openScanner } = await import('/app/scan/scanner.js');
          const canvas = document.createElement('canvas');
          canvas.width = canvas.height = 50;
          const blob = await new Promise((resolve) => canvas.toBlob(resolve));
          const host = document.body.appendChild(document.createElement('div'));
          openScanner(host, { onTexts: () => undefined, onType: () => undefined });
          const files = new DataTransfer();
          files.items.add(new File([blob], 'blank.png', { type: 'image/png' }));
          const input = host.querySelector('input[type=file]');
          input.files = files.files;
          input.dispatchEvent(new Event('change'));
          window.host = host;
          return [core.available, core.trouble.value, (await core.call('jobs')) !== undefined];
        }"""
    )

    assert answer == [True, {"state": "none", "sentence": ""}, True]
    wait_until(page, "host.innerText.includes('No code found in this picture')")


def test_a_new_build_fetches_only_what_changed_and_waits_for_the_tap_or_for_a_newer_one(context, own_app):
    page = first_visit(context, own_app)
    (first,) = page.evaluate(BUILDS)
    own_app.requests.clear()
    has_new_build(page, own_app, "second")
    fetched = {path.rpartition("/")[2] for path in own_app.paths() if path.startswith("/app/")}
    assert fetched == {style_of(own_app.static).name}

    page.reload()
    assert page.evaluate(STYLE) == "first"
    page.evaluate(UPDATE)
    wait_until(page, "update.ready.value")

    # A build that nobody runs is dropped for a newer one.
    (second,) = set(page.evaluate(BUILDS)) - {first}
    has_new_build(page, own_app, "third")
    wait_until(page, f"(async () => !(await {BUILDS}).includes('{second}'))()", seconds=30)
    assert first in page.evaluate(BUILDS)
    change_over(page)
    assert page.evaluate(STYLE) == "third"
    page.evaluate(UPDATE)
    assert page.evaluate("update.ready.value") is False


def test_the_tap_changes_over_while_a_worker_is_busy(context, own_app):
    """A browser holds a new worker back as long as an event of the old one is open, and pages with it."""
    page, other = first_visit(context, own_app), first_visit(context, own_app)
    has_new_build(page, own_app, "second")
    other.evaluate(BUSY)
    asked = []
    page.on("request", lambda request: asked.append(request.url))

    change_over(page)

    assert page.evaluate(STYLE) == "second"
    build = page.evaluate("document.querySelector('script[src]').src.split('/')[4]")
    of_the_app = [url for url in asked if "/app/" in url]
    assert of_the_app
    assert [url for url in of_the_app if f"/app/{build}/" not in url] == []


def test_the_next_start_runs_on_the_new_build_though_nobody_tapped(context, own_app):
    page = first_visit(context, own_app)
    has_new_build(page, own_app, "second")
    page.close()

    page = context.new_page()
    page.goto(own_app.base)
    for _ in range(20):  # the browser changes workers a moment after the last page is gone
        if page.evaluate(STYLE) == "second":
            break
        page.close()
        page = context.new_page()
        page.wait_for_timeout(300)
        page.goto(own_app.base)

    assert page.evaluate(STYLE) == "second"
    wait_until(page, f"(async () => (await {BUILDS}).length === 1)()")


def test_another_tab_is_told_that_it_is_old_and_stays_whole(context, own_app):
    page, other = first_visit(context, own_app), first_visit(context, own_app)
    other.evaluate(UPDATE)
    has_new_build(page, own_app, "second")
    change_over(page)
    context.set_offline(True)

    wait_until(other, "update.ready.value")
    assert other.evaluate(STYLE) == "first"
    late = other.evaluate(
        """() => fetch(document.querySelector('link[rel=stylesheet]').href).then((r) => r.text())"""
    )
    assert "--of-this-build: first" in late
    change_over(other)
    assert other.evaluate(STYLE) == "second"


# What may come in the place of a file of a build.
CORRUPT = {
    "other bytes": ("200 OK", "text/css", b":root { --of-this-build: broken }"),
    "missing": ("404 Not Found", "text/css", b""),
    "a sign-in page": ("200 OK", "text/html", b"<h1>Welcome to this network</h1>"),
}


def test_a_build_with_a_corrupt_file_is_not_taken(context, own_app):
    page = first_visit(context, own_app)
    before = page.evaluate(BUILDS)
    page.evaluate(UPDATE)
    own_app.new_build("second")
    style = style_of(own_app.static).name
    for which, answer in CORRUPT.items():
        own_app.requests.clear()
        own_app.fault = lambda environ, app, answer=answer: (
            answer if environ["PATH_INFO"].endswith(style) else None
        )

        page.evaluate("update.check()")

        wait_for_request(page, own_app, style)
        wait_until(page, "navigator.serviceWorker.getRegistration().then((r) => !r.installing)")
        wait_until(page, f"(async () => (await {BUILDS}).length === 1)()")
        assert page.evaluate(BUILDS) == before, which
        assert page.evaluate("update.ready.value") is False, which
    own_app.close()
    page.reload()
    wait_for_app(page)
    assert page.evaluate(STYLE) == "first"
    own_app.start()

    own_app.fault = None
    page.evaluate(UPDATE)
    page.evaluate("update.check()")
    wait_until(page, "update.ready.value")


def test_a_language_that_comes_slowly_leaves_nothing_of_a_build_that_failed(context, own_app):
    page = first_visit(context, own_app)
    page.evaluate("fetch(new URL('words/es.ftl', document.querySelector('script[src]').src))")
    wait_until(page, "caches.match(new URL('app/words/es.ftl', location.href)).then(Boolean)")
    before = page.evaluate(BUILDS)
    page.evaluate(UPDATE)
    for words in (own_app.static / "words").glob("*.ftl"):
        words.write_text(words.read_text("utf-8") + "\n# changed\n", "utf-8")
        words.with_name(f"{words.name}.br").unlink(missing_ok=True)
    own_app.new_build("second")
    own_app.requests.clear()
    style, failed = style_of(own_app.static).name, threading.Event()

    def fault(environ, app):
        if environ["PATH_INFO"].endswith(style):
            # Asked for once more past all caches; what still comes comes a moment after that.
            threading.Timer(0.5, failed.set).start()
            return "404 Not Found", "text/css", b""
        if environ["PATH_INFO"].endswith(".ftl"):
            failed.wait()
        return None

    own_app.fault = fault
    page.evaluate("update.check()")

    wait_until(page, "navigator.serviceWorker.getRegistration().then((r) => !r.installing)", seconds=30)
    wait_for_request(page, own_app, "words/es.ftl")
    assert page.evaluate(BUILDS) == before


def missing(script):
    """A server that has lost one script."""
    gone = ("404 Not Found", "text/plain", b"")
    return lambda environ, app: gone if environ["PATH_INFO"].endswith(script.name) else None


def test_a_phone_works_offline_before_the_rare_screens_have_come_and_says_when_they_have(context, own_app):
    own_app.fault = missing(late_script(own_app.static))
    page = first_visit(context, own_app, is_whole=False)
    page.goto(f"{own_app.base}/#/you")
    page.get_by_text("It needs a network to start").wait_for()
    context.set_offline(True)
    page.goto(f"{own_app.base}/#/help")
    page.reload()
    page.get_by_text("This screen is not on the phone yet.").wait_for()

    own_app.fault = None
    context.set_offline(False)
    page.goto(f"{own_app.base}/#/you")
    page.reload()
    page.get_by_text("It starts without a network").wait_for()
    assert page.evaluate(WHOLE)
    context.set_offline(True)
    page.goto(f"{own_app.base}/#/help")
    page.reload()

    page.get_by_role("heading", name="Help", level=1).wait_for()


def test_a_phone_that_had_all_screens_takes_no_build_without_them(context, own_app):
    page = first_visit(context, own_app)
    before = page.evaluate(BUILDS)
    page.evaluate(UPDATE)
    script = late_script(own_app.static)
    script.write_text(script.read_text() + "\n// changed\n")
    script.with_name(f"{script.name}.br").unlink()
    own_app.new_build("second")
    own_app.fault = missing(script)

    page.evaluate("update.check()")

    wait_until(page, "navigator.serviceWorker.getRegistration().then((r) => !r.installing)")
    wait_until(page, f"(async () => (await {BUILDS}).length === 1)()")
    assert page.evaluate(BUILDS) == before


def test_a_withdrawn_app_leaves_the_phone_and_the_records_stay(context, own_app):
    page = first_visit(context, own_app)
    page.evaluate(UPDATE)
    stores = page.evaluate("indexedDB.databases().then((all) => all.map(({ name }) => name))")
    shutil.copy(own_app.static / "sw-retire.js", own_app.static / "sw.js")
    own_app.new_build("second")

    page.evaluate("update.check()")

    wait_until(page, f"(async () => (await {BUILDS}).length === 0)()")
    wait_until(page, "navigator.serviceWorker.getRegistration().then((found) => !found)")
    assert (
        stores
        == page.evaluate("indexedDB.databases().then((all) => all.map(({ name }) => name))")
        == ["swaptrail"]
    )


def test_on_an_address_that_is_not_secure_it_refuses_to_record(make_profile, shared_app):
    port = shared_app.port
    context = make_profile(args=["--host-resolver-rules=MAP workshop.test 127.0.0.1"])
    page = context.new_page()
    page.route("**/*", lambda route: serve_as(route, port))

    page.goto(f"http://workshop.test:{port}/")

    page.wait_for_selector("text=Swaptrail cannot record here")
    assert "https address" in page.inner_text("#app")
    page.unroute_all(behavior="ignoreErrors")  # what the page still asks for ends with it


def serve_as(route, port):
    """Hand out the app's files under a name that its server does not go by."""
    url = route.request.url.replace("workshop.test", "localhost")
    response = route.fetch(url=url, headers={**route.request.headers, "host": f"localhost:{port}"})
    route.fulfill(response=response)
