"""`swaptrail labels`: prints new labels, lists what became of the printed ones, takes some out of use."""

import re
from contextlib import closing
from datetime import UTC
from datetime import datetime
from pathlib import Path
from typing import Any

import click
from sqlite_utils import Database

from server.clock import now_ms
from server.commands.options import WHOLE_NUMBER
from server.commands.options import DataCommand
from server.commands.options import data_option
from server.commands.options import option
from server.core.codes import labels
from server.core.messages import any_of
from server.core.messages import message
from server.core.printing.advice import refuse_unreadable
from server.core.printing.advice import summary
from server.core.printing.advice import warnings
from server.core.printing.face import Face
from server.core.printing.layout import DPIS
from server.core.printing.layout import OPTIONS
from server.core.printing.layout import PAPERS
from server.core.printing.layout import Layout
from server.core.printing.layout import layout_of
from server.core.printing.scan_distance import RULE
from server.core.printing.scan_distance import USUAL_CM
from server.core.printing.scan_distance import checked_distance
from server.keeping.new_file import refuse_unless_new
from server.keeping.new_file import written_whole
from server.labelling import store
from server.labelling.files import FORMATS
from server.labelling.files import drawn
from server.labelling.files import page_count
from server.labelling.states import FREE
from server.labelling.states import ON
from server.labelling.states import VOID
from server.labelling.states import batch_options
from server.labelling.states import batches
from server.labelling.symbol import face_for
from server.refusals import CommandRefused
from server.serving.serve import settled_base
from server.storage import folder_with_data
from server.words.spoken import say
from server.words.spoken import text

_WAYS = ("count", "list", "again", "void")
_READABLE = 0o666  # a sheet of labels is no secret: whoever prints it may be somebody else

_LAYOUT = "commands-labels-layout"
_HEADS = {
    "batch": "commands-labels-head-batch",
    "made": "commands-labels-head-made",
    "labels": "commands-labels-head-labels",
    FREE: "commands-labels-head-free",
    ON: "commands-labels-head-on",
    VOID: "commands-labels-head-void",
    "layout": "commands-labels-head-layout",
}


@click.command("labels", cls=DataCommand, help="commands-labels-help")
@data_option
@option("--count", "commands-labels-count", type=WHOLE_NUMBER, metavar="N")
@option("--list", "commands-labels-list", is_flag=True)
@option("--again", "commands-labels-again", type=WHOLE_NUMBER, metavar="BATCH")
@option("--void", "commands-labels-void", metavar="CODE|BATCH")
@option("--out", "commands-labels-out", type=Path, metavar="FILE")
@option("--reason", "commands-labels-reason", default="", metavar="TEXT")
@option("--force", "commands-labels-force", is_flag=True)
@option("--distance", "commands-labels-distance", about={"cm": USUAL_CM}, default=str(USUAL_CM), metavar="CM")
@option("--paper", "commands-labels-paper", section=_LAYOUT, metavar="|".join(PAPERS))
@option("--grid", "commands-labels-grid", section=_LAYOUT, metavar="CxR")
@option("--label", "commands-labels-label", section=_LAYOUT, metavar="WxH")
@option("--margin", "commands-labels-margin", section=_LAYOUT, metavar="LxT")
@option("--gap", "commands-labels-gap", section=_LAYOUT, metavar="AxD")
@option("--precut", "commands-labels-precut", section=_LAYOUT, is_flag=True, flag_value="yes")
@option("--roll", "commands-labels-roll", section=_LAYOUT, metavar="WxH")
@option("--dpi", "commands-labels-dpi", section=_LAYOUT, metavar="|".join(map(str, DPIS)))
def command(data: Path, out: Path | None, reason: str, force: bool, distance: str, **given: Any) -> None:
    """Prints new labels, shows what became of the printed ones, or takes some out of use."""
    _check_one_way([way for way in _WAYS if given[way] is not None and given[way] is not False])
    options = {name: given[name] for name in OPTIONS if given[name]}
    if given["list"]:
        _list(data)
    elif given["void"] is not None:
        _void(data, given["void"], reason)
    elif given["again"] is not None:
        _print_again(data, given["again"], out, distance, options)
    else:
        _print_new(data, given["count"], out, distance, options, force)


def _check_one_way(ways: list[str]) -> None:
    if not ways:
        raise click.UsageError(say("commands-labels-no-way", ways=any_of([f"--{way}" for way in _WAYS])))
    if len(ways) > 1:
        raise click.UsageError(say("commands-not-together", first=f"--{ways[0]}", second=f"--{ways[1]}"))


def _print_new(
    data: Path, number: int, out: Path | None, cm: str, options: dict[str, str], force: bool
) -> None:
    distance, layout, file = checked_distance(cm), layout_of(options), _checked_out(out)
    if not 1 <= number <= store.MOST_LABELS:
        about = {"given": str(number), "most": store.MOST_LABELS}
        raise CommandRefused(message("commands-labels-count-range", **about))
    folder = folder_with_data(data, message("keeping-name-or-serve"))
    files = _new_files(file, number, layout)
    base = settled_base(data, None, None)
    with closing(folder.open()) as db:
        face = face_for(layout, base, distance)
        refuse_unreadable(layout, face, force)
        printing = store.issue(db, number, base, options, now_ms())
        _write(files, printing, base, layout, face)
        store.done(db, printing.id, now_ms())
    _tell(data, printing, base, layout, face)
    _warn(layout, face, distance)


def _print_again(data: Path, batch: int, out: Path | None, cm: str, options: dict[str, str]) -> None:
    distance, layout, file = checked_distance(cm), layout_of(options), _checked_out(out)
    folder = folder_with_data(data)
    base = settled_base(data, None, None)
    with closing(folder.open()) as db:
        kept = batch_options(db, batch)
        if not options:
            layout = layout_of(kept)
        files = _new_files(file, store.left(db, batch), layout)
        face = face_for(layout, base, distance)
        printing = store.again(db, batch, now_ms())
        _write(files, printing, base, layout, face)
        store.done(db, printing.id, now_ms())
    _tell(data, printing, base, layout, face)
    print(say("commands-labels-written-before"))
    _warn(layout, face, distance)


def _tell(data: Path, printing: store.Printing, base: str, layout: Layout, face: Face) -> None:
    about = {"batch": str(printing.batch), "count": len(printing.codes), "address": base, "folder": str(data)}
    print(say("commands-labels-made", **about))
    print(text(summary(layout, face)))


def _warn(layout: Layout, face: Face, distance: int) -> None:
    lines = warnings(layout, face, distance)
    for line in lines:
        print(say("commands-warning", what=line))
    if lines:
        print(text(RULE))


def _new_files(out: Path, count: int, layout: Layout) -> list[Path]:
    """Returns the files that so many labels take; refuses where one of them is there already."""
    pages = page_count(count, layout) if _form(out) == "svg" else 1
    files = [out, *(out.with_stem(f"{out.stem}-{number}") for number in range(2, pages + 1))]
    for file in files:
        refuse_unless_new(file)
    return files


def _write(files: list[Path], printing: store.Printing, base: str, layout: Layout, face: Face) -> None:
    title = say("commands-labels-title", batch=str(printing.batch))
    contents = drawn(printing.codes, base, layout, face, _form(files[0]), title)
    for file, content in zip(files, contents, strict=True):
        with written_whole(file, _READABLE) as part:
            part.write_bytes(content)
        print(file)


def _form(out: Path) -> str:
    return out.suffix.lower().lstrip(".")


def _list(data: Path) -> None:
    with closing(_opened(data)) as db:
        printed = batches(db)
    if not printed:
        print(say("commands-labels-none"))
        return
    heads = ["batch", "made", "labels", FREE, ON, VOID, "layout"]
    rows = [[say(_HEADS[head]) for head in heads]]
    for batch in printed:
        made = datetime.fromtimestamp(batch.made_at / 1000, UTC).strftime("%Y-%m-%d %H:%M")
        counts = [str(batch.counts[state]) for state in (FREE, ON, VOID)]
        total = str(sum(batch.counts.values()))
        rows.append([str(batch.id), made, total, *counts, text(layout_of(batch.options).words)])
    lines = _columns(rows)
    print(lines[0])
    for batch, line in zip(printed, lines[1:], strict=True):
        print(line)
        if not batch.finished:
            print(say("commands-labels-unfinished", batch=str(batch.id)))


def _void(data: Path, what: str, reason: str) -> None:
    with closing(_opened(data)) as db:
        if re.fullmatch(r"[0-9]{1,9}", what) and labels.parse(what)["outcome"] != "ours":
            batch, codes = int(what), []
        else:
            read = labels.parse(what)
            if read["outcome"] != "ours":
                raise CommandRefused(message("commands-labels-void-wrong", code=what, why=read["sentence"]))
            printed_in = store.batch_with(db, read["code"])
            if printed_in is None:
                raise CommandRefused(message("commands-labels-void-foreign", code=what))
            batch, codes = printed_in, [read["code"]]
        batch_options(db, batch)
        gone = store.void(db, batch, codes, reason, now_ms())
    print(say("commands-labels-gone", count=len(gone), batch=str(batch)))


def _columns(rows: list[list[str]]) -> list[str]:
    """Returns the rows with their columns below each other: figures to the right, words to the left."""
    widths = [max(map(len, column)) for column in zip(*rows, strict=True)]
    return [
        "  ".join(
            cell.ljust(width) if at in {1, len(row) - 1} else cell.rjust(width)
            for at, (cell, width) in enumerate(zip(row, widths, strict=True))
        ).rstrip()
        for row in rows
    ]


def _opened(data: Path) -> Database:
    folder = folder_with_data(data)
    folder.prepare()
    return folder.open()


def _checked_out(out: Path | None) -> Path:
    if out is None:
        raise CommandRefused(message("commands-labels-out-missing"))
    if _form(out) not in FORMATS:
        raise CommandRefused(message("commands-labels-out-ending", file=str(out)))
    if not out.parent.is_dir():
        about = {"file": str(out), "folder": str(out.parent)}
        raise CommandRefused(message("commands-labels-out-folder", **about))
    return out
