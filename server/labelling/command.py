"""`swaptrail labels`: issues codes and writes them as sheets to print."""

from contextlib import closing
from pathlib import Path

from server.clock import now_ms
from server.labelling import pdf
from server.labelling import sheet
from server.labelling import store
from server.labelling import svg
from server.refusals import CommandRefused
from server.serve import settled_base
from server.storage import DataFolder

MOST_LABELS = 2000


def run(data: Path, count: int, out: Path) -> None:
    """Writes `count` new labels to `out`; SVG holds one sheet a file, PDF all in one."""
    _check(count, out)
    base = settled_base(data, None, None)
    with closing(DataFolder(data).open()) as db:
        codes = store.issue(db, count, base, now_ms())
    pages = sheet.pages(codes, base)
    if out.suffix.lower() == ".pdf":
        files = {out: pdf.draw(pages)}
    else:
        names = [out, *(out.with_stem(f"{out.stem}-{n}") for n in range(2, len(pages) + 1))]
        files = {name: svg.draw(page) for name, page in zip(names, pages, strict=True)}
    for name, content in files.items():
        name.write_bytes(content)
        print(name)
    print(f"{count} labels for {base}, an address that stays with the data in {data}.")


def _check(count: int, out: Path) -> None:
    if not 1 <= count <= MOST_LABELS:
        raise CommandRefused(f"--count {count} is out of range. Take 1 to {MOST_LABELS}.")
    if out.suffix.lower() not in {".svg", ".pdf"}:
        raise CommandRefused(f"--out {out} ends in neither .svg nor .pdf. Give it one of the two.")
    if not out.parent.is_dir():
        raise CommandRefused(f"--out {out}: the folder {out.parent} does not exist. Make it first.")
