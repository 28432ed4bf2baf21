"""Joins the app's modules and styles into few files, because each request costs a weak line a round trip.

What begin.js and main.js import at once becomes a file each; what they import later (`import(...)`)
becomes chunks, which LATE names; each worker is a file of its own, for a worker shares none with the page.
"""

import json
import os
import re
import shutil
import subprocess
import tempfile
from pathlib import Path
from typing import Any

from server.web.shell import LATE

BEGIN = "begin.js"
MAIN = "main.js"
# Works where the others do not; it imports nothing.
PLAIN = "plain"
WORKERS = ("core/worker.js", "scan/decoding/code-worker.js")
# Beside the sound, when somebody listens: nothing asks for it at once.
LATE_WORKERS = ("hear/ticks-worklet.js",)
_ENTRIES = (BEGIN, MAIN, f"{PLAIN}.js", *WORKERS, *LATE_WORKERS)
STYLES = "styles/app.css"

# Fetched beside the script instead of after it: without them nothing can be concluded.
_NEEDED_AT_ONCE = ("vendor/micropython/micropython.wasm", "core.json")
# Beside core.json where the core is compiled.
CORE_BYTES = "core.bin"
LATE_CORE_BYTES = "core-late.bin"

# Of Node, where the interpreter runs, too; never asked for in a browser.
_OF_NODE = ("fs", "module", "path", "url")

_STYLE_LINK = re.compile(r'^ *<link rel="stylesheet" href="\./app/([^"]+)">\n', re.MULTILINE)
_IMPORT_MAP = re.compile(
    r'(?: *<!--(?:(?!-->).)*-->\n)? *<script type="importmap">(.*?)</script>\n', re.DOTALL
)
_TWO_COLOURS = re.compile(r"(--[\w-]+):\s*light-dark\(([^,()]+),\s*([^()]+)\);")
_INDENTED = re.compile(r"\n {2,}")
_SCRIPT = re.compile(r'^( *)<script type="module" src="\./app/begin\.js"></script>\n', re.MULTILINE)


class BundleFailed(RuntimeError):
    """The bundler refused the app's sources; the text is what it said."""


def bundle(static: Path, out: Path, is_compiled: bool = False) -> None:
    """Writes index.html and what it needs of scripts and styles into `out`; `is_compiled` is the core."""
    page = (static / "index.html").read_text("utf-8")
    sheets = _STYLE_LINK.findall(page)
    if not sheets or not _IMPORT_MAP.search(page) or not _SCRIPT.search(page):
        raise BundleFailed("static/index.html lacks its styles, its import map or its script.")
    at_once, late = _scripts(static, out)
    if is_compiled:
        late.append(LATE_CORE_BYTES)
    (out / LATE).write_text(json.dumps(late), "utf-8")
    _styles(static, out, sheets)
    (out / "index.html").write_text(
        _page(page, at_once, [*_NEEDED_AT_ONCE, *([CORE_BYTES] if is_compiled else [])]), "utf-8"
    )
    plain = f"{PLAIN}.html"
    (out / plain).write_text(_one_style((static / plain).read_text("utf-8")), "utf-8")


def _scripts(static: Path, out: Path) -> tuple[list[str], list[str]]:
    """Bundles all scripts; returns those that the page needs at once, and those that come late."""
    with tempfile.TemporaryDirectory(prefix="swaptrail-bundle-") as folder:
        sources = Path(folder).resolve() / "static"
        left_out = shutil.ignore_patterns("node_modules", "esbuild")
        shutil.copytree(static, sources, ignore=left_out)
        _import_main_later(sources, _joined(static, sources, Path(folder, "apart").resolve()))
        outputs = _joined(static, sources, out.resolve())
    for name in outputs:
        _close_templates(out / name)
    imports = {
        name: [each["path"] for each in output["imports"] if each["kind"] == "import-statement"]
        for name, output in outputs.items()
    }
    first = _reached(imports, [BEGIN, MAIN, *WORKERS])
    at_once = {*imports[BEGIN], *imports[MAIN]}
    return sorted(at_once - {BEGIN} | {MAIN}), sorted(imports.keys() - first)


def _joined(static: Path, sources: Path, out: Path) -> dict[str, dict[str, Any]]:
    """Bundles the scripts of `sources` into `out`; returns what the bundler says of each file."""
    with tempfile.TemporaryDirectory(prefix="swaptrail-bundle-") as folder:
        meta = Path(folder, "meta.json")
        _esbuild(
            static,
            *(str(sources / name) for name in _ENTRIES),
            *aliases(sources),
            *(f"--external:{name}" for name in _OF_NODE),
            "--splitting",
            "--format=esm",
            "--target=es2022",
            f"--outdir={out}",
            f"--outbase={sources}",
            "--chunk-names=part-[hash]",
            "--legal-comments=eof",
            f"--metafile={meta}",
            cwd=sources,
        )
        outputs = json.loads(meta.read_text("utf-8"))["outputs"]

    def inside(name: str) -> str:
        return Path(sources, name).resolve().relative_to(out).as_posix()

    for output in outputs.values():
        imported = [each for each in output["imports"] if not each.get("external")]
        output["imports"] = [{**each, "path": inside(each["path"])} for each in imported]
    return {inside(name): output for name, output in outputs.items()}


def _import_main_later(sources: Path, outputs: dict[str, dict[str, Any]]) -> None:
    """Has each script that is read later import main.js, which runs by then.

    So the bundler parts what comes first from what comes later and no further: a file for each set of scripts
    that share something would be several small ones, which pack worse.
    """
    for output in outputs.values():
        entry = output.get("entryPoint")
        if entry and entry not in _ENTRIES:
            script = sources / entry
            main = os.path.relpath(sources / MAIN, script.parent)
            script.write_text(f'import "{Path(main).as_posix()}";\n{script.read_text("utf-8")}', "utf-8")


def _reached(imports: dict[str, list[str]], names: list[str]) -> set[str]:
    """Returns the scripts `names` and all that they import at once, and so on."""
    reached: set[str] = set()
    waiting = list(names)
    while waiting:
        name = waiting.pop()
        if name not in reached:
            reached.add(name)
            waiting += imports[name]
    return reached


def _close_templates(script: Path) -> None:
    """Takes the indentation out of a script's templates: minified, it has lines nowhere else."""
    if script.suffix == ".js" and not script.as_posix().endswith(WORKERS + LATE_WORKERS):
        script.write_text(_INDENTED.sub(" ", script.read_text("utf-8")), "utf-8")


def _styles(static: Path, out: Path, sheets: list[str]) -> None:
    imports = "\n".join(f'@import "./{sheet}";' for sheet in sheets)
    _esbuild(static, "--loader=css", f"--outfile={out / STYLES}", given=imports)
    colours = "".join((static / sheet).read_text("utf-8") for sheet in sheets)
    file = out / STYLES
    file.write_text(colours_for_older_phones(colours) + file.read_text("utf-8"), "utf-8")


def colours_for_older_phones(styles: str) -> str:
    """Returns the colours once more, for a browser older than `light-dark()` (2024): it would show none.

    The bundler lowers nothing of this, and by hand each colour would stand twice.
    """
    found = _TWO_COLOURS.findall(styles)
    light = "".join(f"{name}:{value.strip()};" for name, value, _ in found)
    dark = "".join(f"{name}:{value.strip()};" for name, _, value in found)
    # Heavier than `:root` alone, lighter than what paper says of the same colours.
    return (
        "@supports not (color:light-dark(#000,#fff)){"
        f"html:root{{{light}}}"
        f"@media (prefers-color-scheme:dark){{html:root:where(:not([data-theme=light])){{{dark}}}}}"
        f"html:root:where([data-theme=dark]){{{dark}}}}}\n"
    )


def small_worker(static: Path, name: str) -> str:
    """Returns a service worker without comments; a browser looks for a new one at every start.

    The list of files that the server fills in holds double quotes, so it has to stand in single ones.
    """
    with tempfile.TemporaryDirectory(prefix="swaptrail-worker-") as folder:
        small = Path(folder, name)
        _esbuild(static, str(static / name), "--target=es2022", f"--outfile={small}")
        return small.read_text("utf-8").replace('"__PRECACHE__"', "'__PRECACHE__'")


def _esbuild(static: Path, *arguments: str, given: str | None = None, cwd: Path | None = None) -> None:
    done = subprocess.run(
        [esbuild(static), "--bundle", "--minify", "--log-level=warning", *arguments],
        cwd=cwd or static,
        input=given,
        capture_output=True,
        text=True,
        check=False,
    )
    if done.returncode != 0 or done.stderr:
        raise BundleFailed(f"esbuild ended with exit code {done.returncode}:\n{done.stderr}")


def esbuild(static: Path) -> str:
    """Returns the bundler's own program, which the build hook has put into static/vendor/."""
    programs = sorted((static / "vendor/esbuild").glob("esbuild*"))
    if not programs:
        raise BundleFailed("static/vendor/ holds no esbuild: install the project again with pip.")
    return str(programs[0].resolve())


def aliases(static: Path) -> list[str]:
    """Returns the arguments for what the page's import map says, name by name: esbuild knows no map."""
    import_map = _IMPORT_MAP.search((static / "index.html").read_text("utf-8"))
    if import_map is None:
        raise BundleFailed("static/index.html lacks its import map.")
    arguments = []
    for name, address in json.loads(import_map[1])["imports"].items():
        file = static / address.removeprefix("./app/")
        if name.endswith("/"):
            arguments += [
                f"--alias:{name}{one.relative_to(file).as_posix()}={one}" for one in file.rglob("*.js")
            ]
        else:
            arguments.append(f"--alias:{name}={file}")
    return sorted(arguments)


def _page(page: str, at_once: list[str], fetched: list[str]) -> str:
    """Returns the page with one style sheet, no import map, and what is needed at once named ahead."""

    def script(tag: re.Match[str]) -> str:
        ahead = [
            *(f'<link rel="modulepreload" href="./app/{name}">' for name in at_once),
            *(f'<link rel="preload" as="fetch" crossorigin href="./app/{name}">' for name in fetched),
        ]
        return tag[0] + "".join(f"{tag[1]}{line}\n" for line in ahead)

    return _SCRIPT.sub(script, _IMPORT_MAP.sub("", _one_style(page)))


def _one_style(page: str) -> str:
    """Returns a page with the one style sheet in place of its own."""
    first = _STYLE_LINK.search(page)
    assert first is not None
    others = _STYLE_LINK.sub("", page[first.end() :])
    return page[: first.start()] + first[0].replace(first[1], STYLES) + others
