"""The app served from a copy of its files, so that a test can make a new build of it."""

import json
import shutil
from pathlib import Path

from tests.browser_support import wait_until
from tests.static.app_server import AppServer
from tests.wheels import served_app

# What the page shows of the build that it runs on.
STYLE = "getComputedStyle(document.documentElement).getPropertyValue('--of-this-build').trim()"


class OwnApp(AppServer):
    """A server whose app can be changed; the build it begins with is called `first`."""

    def __init__(self, folder: Path) -> None:
        """Copy the app into `folder` and serve it."""
        static = shutil.copytree(
            served_app(), folder / "static", ignore=shutil.ignore_patterns("node_modules")
        )
        mark_build(static, "first")
        super().__init__(folder / "data", static)

    def new_build(self, name: str) -> None:
        """Serve another build at the same address."""
        mark_build(self.static, name)
        self.close()
        self.start()


# Whether what may come late has come, too; asked on the first page of a built app.
WHOLE = """async () => {
  const worker = await (await fetch('sw.js')).text();
  const { late } = JSON.parse(/JSON\\.parse\\('(.*?)'\\)/.exec(worker)[1]);
  const found = await Promise.all(late.map(({ url }) => caches.match(new URL(url, location.href))));
  return found.every(Boolean);
}"""


def wait_for_offline_use(page, seconds=30):
    """Wait until all of the app is on the phone, what may come late as well: the network may be cut then."""
    wait_until(page, "navigator.serviceWorker.controller !== null", seconds=seconds)
    wait_until(page, WHOLE, seconds=seconds)


def first_visit(context, server, complaints=None, is_whole=True):
    """Open the app and wait until it is on the phone; unless `is_whole` what may come late may be missing."""
    page = context.new_page()
    if complaints:
        complaints.listen(page)
    page.goto(server.base)
    wait_until(page, "navigator.serviceWorker.controller !== null", seconds=30)
    wait_for_app(page)
    if is_whole:
        wait_until(page, WHOLE, seconds=30)
    return page


def wait_for_app(page):
    """Wait until the screens have drawn something."""
    wait_until(
        page,
        "document.querySelector('#app > :not(.starting)') !== null && !document.querySelector('#app').inert",
        seconds=30,
    )


def style_of(static: Path) -> Path:
    """Return the style sheet that `mark_build` changes: the one of a built app, else the first."""
    built = static / "styles" / "app.css"
    return built if built.is_file() else static / "styles" / "tokens.css"


def late_script(static: Path) -> Path:
    """Return a script of a built app that may come late."""
    names = json.loads((static / "late.json").read_text("utf-8"))
    return max((static / name for name in names), key=lambda file: file.stat().st_size)


def mark_build(static: Path, name: str) -> None:
    """Give the build in `static` a name that its pages show."""
    style = style_of(static)
    kept = style.read_text().partition("\n/* build */")[0]
    style.write_text(f"{kept}\n/* build */ :root {{ --of-this-build: {name}; }}\n")
    style.with_name(f"{style.name}.br").unlink(missing_ok=True)
