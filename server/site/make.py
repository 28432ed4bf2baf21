"""Makes the files of a site and puts them into their folder."""

from pathlib import Path

from server.site.folder import put
from server.site.notes import NOTES
from server.site.pages import HEADERS
from server.site.pages import headers_file
from server.site.pages import site_files
from server.site.pages import site_shell


def write(static: Path, out: Path) -> str:
    """Writes the app of `static` into `out`; returns a sentence that says what came of it."""
    shell = site_shell(static)
    files = site_files(shell)
    files[HEADERS] = headers_file(shell).encode()
    files["README.txt"] = NOTES.encode()
    files["LICENSES.txt"] = _licences(static).encode()
    newer = put(files, shell.build, out)
    size = sum(len(body) for body in files.values())
    done = "took the place of the one before" if newer else "is ready"
    return f"The site in {out} {done}: build {shell.build}, {len(files)} files, {size / 1e6:.1f} MB."


def _licences(static: Path) -> str:
    return "\n\n".join(
        f"{file.parent.name}\n\n{file.read_text('utf-8').strip()}\n"
        for file in sorted((static / "vendor").glob("*/LICENSE"))
    )
