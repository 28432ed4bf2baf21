"""The app as one person's tool: the page says that there is no server, and any request to one is a fault."""

import shutil
from pathlib import Path

from tests.static.app_server import AppServer
from tests.wheels import served_app

_PAGE = '<html lang="en"'


class AloneApp(AppServer):
    """Serves the app's files from a copy whose page is marked; `asked` tells what it asked of a server."""

    def __init__(self, folder: Path, static: Path | None = None) -> None:
        """Copy the app into `folder`, mark its page and serve it."""
        kept = shutil.ignore_patterns("node_modules", "esbuild")
        static = shutil.copytree(static or served_app(), folder / "static", ignore=kept)
        page = static / "index.html"
        text = page.read_text()
        assert text.count(_PAGE) == 1
        page.write_text(text.replace(_PAGE, f'{_PAGE} data-server="none"'))
        super().__init__(folder / "data", static)

    def asked(self) -> list:
        """Return the requests that only a server answers."""
        return [request for request in self.requests if request.path.startswith("/api")]
