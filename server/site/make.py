"""Makes the files of a site and puts them into their folder."""

from pathlib import Path

from server.core.messages import decimal
from server.site.folder import put
from server.site.notes import notes
from server.site.pages import HEADERS
from server.site.pages import headers_file
from server.site.pages import site_files
from server.site.pages import site_shell
from server.words.spoken import say


def write(static: Path, out: Path) -> str:
    """Writes the app of `static` into `out`; returns a sentence that says what came of it."""
    shell = site_shell(static)
    files = site_files(shell)
    files[HEADERS] = headers_file(shell).encode()
    files["README.txt"] = notes().encode()
    files["LICENSES.txt"] = _licences(static).encode()
    newer = put(files, shell.build, out)
    size = sum(len(body) for body in files.values())
    made = {"folder": str(out), "build": shell.build, "files": len(files)}
    return say(
        "serving-site-newer" if newer else "serving-site-ready", **made, size=decimal(size // 100_000, 1)
    )


def _licences(static: Path) -> str:
    return "\n\n".join(
        f"{file.parent.name}\n\n{file.read_text('utf-8').strip()}\n"
        for file in sorted((static / "vendor").glob("*/LICENSE"))
    )
