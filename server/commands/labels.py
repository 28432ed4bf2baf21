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
from server.commands.options import DataCommand
from server.commands.options import SectionOption
from server.commands.options import data_option
from server.core.codes import labels
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
from server.labelling import store
from server.labelling.files import FORMATS
from server.labelling.files import drawn
from server.labelling.states import FREE
from server.labelling.states import ON
from server.labelling.states import VOID
from server.labelling.states import batch_options
from server.labelling.states import batches
from server.labelling.symbol import face_for
from server.refusals import CommandRefused
from server.serving.serve import settled_base
from server.storage import DataFolder
from server.storage import folder_with_data
from server.storage.durable import sync_file

_WAYS = ("count", "list", "again", "void")


def _layout_option(name: str, **kwargs: Any) -> Any:
    return click.option(name, cls=SectionOption, section="Layout", **kwargs)


@click.command("labels", cls=DataCommand)
@data_option
@click.option("--count", type=int, metavar="N", help="Print so many new labels.")
@click.option("--list", is_flag=True, help="Show the batches and what became of them.")
@click.option(
    "--again", type=int, metavar="BATCH", help="Write the labels of a batch that are on no sensor again."
)
@click.option("--void", metavar="CODE|BATCH", help="Take a label, or what is left of a batch, out of use.")
@click.option("--out", type=Path, metavar="FILE", help="Ends in .svg or .pdf.")
@click.option("--reason", default="", metavar="TEXT", help="Why it goes out of use.")
@click.option("--distance", default=str(USUAL_CM), metavar="CM", help=f"Scanned from so far ({USUAL_CM}).")
@_layout_option("--paper", metavar="|".join(PAPERS), help="A sheet (a4).")
@_layout_option("--grid", metavar="CxR", help="Columns and rows (as many as fit).")
@_layout_option("--label", metavar="WxH", help="Size of a label on a sheet, mm (26x32).")
@_layout_option("--margin", metavar="LxT", help="From the paper's left and upper edge, mm.")
@_layout_option("--gap", metavar="AxD", help="Between columns and between rows, mm (0x0).")
@_layout_option(
    "--precut", is_flag=True, flag_value="yes", help="The sheet is cut already: no marks, no note."
)
@_layout_option("--roll", metavar="WxH", help="A roll with one label a page, mm.")
@_layout_option("--dpi", metavar="|".join(map(str, DPIS)), help="Dots of the printer (roll 203, sheet 300).")
def command(data: Path, out: Path | None, reason: str, distance: str, **given: Any) -> None:
    """Print new labels, show what became of the printed ones, or take some out of use.

    Exactly one of --count, --list, --again and --void says which.
    """
    _check_one_way([way for way in _WAYS if given[way] is not None and given[way] is not False])
    options = {name: given[name] for name in OPTIONS if given[name]}
    if given["list"]:
        _list(data)
    elif given["void"] is not None:
        _void(data, given["void"], reason)
    elif given["again"] is not None:
        _print_again(data, given["again"], out, distance, options)
    else:
        _print_new(data, given["count"], out, distance, options)


def _check_one_way(ways: list[str]) -> None:
    if not ways:
        raise click.UsageError(f"One of {', '.join(f'--{way}' for way in _WAYS)} is missing.")
    if len(ways) > 1:
        raise click.UsageError(f"--{ways[1]} does not go with --{ways[0]}.")


def _print_new(data: Path, number: int, out: Path | None, cm: str, options: dict[str, str]) -> None:
    distance, layout, file = checked_distance(cm), layout_of(options), _checked_out(out)
    if not 1 <= number <= store.MOST_LABELS:
        raise CommandRefused(f"--count {number} is out of range. Take 1 to {store.MOST_LABELS}.")
    base = settled_base(data, None, None)
    with closing(DataFolder(data).open()) as db:
        face = face_for(layout, base, distance)
        printing = store.issue(db, number, base, options, now_ms())
        _write(file, printing, base, layout, face)
        store.done(db, printing.id, now_ms())
    _tell(data, printing, base, layout, face)
    _warn(layout, face, distance)


def _print_again(data: Path, batch: int, out: Path | None, cm: str, options: dict[str, str]) -> None:
    distance, layout, file = checked_distance(cm), layout_of(options), _checked_out(out)
    folder_with_data(data)
    base = settled_base(data, None, None)
    with closing(DataFolder(data).open()) as db:
        if not options:
            layout = layout_of(batch_options(db, batch))
        face = face_for(layout, base, distance)
        printing = store.again(db, batch, now_ms())
        _write(file, printing, base, layout, face)
        store.done(db, printing.id, now_ms())
    _tell(data, printing, base, layout, face)
    print("These were written before: destroy what was printed of them, so that none is on two sensors.")
    print("A phone that has not sent yet may have used some.")
    _warn(layout, face, distance)


def _tell(data: Path, printing: store.Printing, base: str, layout: Layout, face: Face) -> None:
    print(f"Batch {printing.batch}: {len(printing.codes)} labels for {base},")
    print(f"an address that stays with the data in {data}.")
    print(summary(layout, face))


def _warn(layout: Layout, face: Face, distance: int) -> None:
    lines = warnings(layout, face, distance)
    for line in lines:
        print(f"Warning: {line}")
    if lines:
        print(RULE)


def _write(out: Path, printing: store.Printing, base: str, layout: Layout, face: Face) -> None:
    form = out.suffix.lower().lstrip(".")
    title = f"Labels, batch {printing.batch}"
    for number, content in enumerate(drawn(printing.codes, base, layout, face, form, title), 1):
        name = out if number == 1 else out.with_stem(f"{out.stem}-{number}")
        name.write_bytes(content)
        sync_file(name)
        print(name)


def _list(data: Path) -> None:
    with closing(_opened(data)) as db:
        printed = batches(db)
    if not printed:
        print("No labels were printed here yet.")
        return
    print(f"{'batch':>5}  {'made (UTC)':16}  {'labels':>6}  {FREE:>8}  {ON:>11}  {VOID:>5}  layout")
    for batch in printed:
        made = datetime.fromtimestamp(batch.made_at / 1000, UTC).strftime("%Y-%m-%d %H:%M")
        counts = batch.counts
        print(
            f"{batch.id:>5}  {made:16}  {sum(counts.values()):>6}  {counts[FREE]:>8}  {counts[ON]:>11}  "
            f"{counts[VOID]:>5}  {layout_of(batch.options).words}"
        )
        if not batch.finished:
            print(f"       its file was never finished: --again {batch.id} writes it")


def _void(data: Path, what: str, reason: str) -> None:
    with closing(_opened(data)) as db:
        if re.fullmatch(r"[0-9]{1,9}", what) and labels.parse(what)["outcome"] != "ours":
            batch, codes = int(what), []
        else:
            read = labels.parse(what)
            if read["outcome"] != "ours":
                raise CommandRefused(f"--void {what}: {read['sentence']}")
            printed_in = store.batch_with(db, read["code"])
            if printed_in is None:
                raise CommandRefused(f"--void {what}: this label was not printed here.")
            batch, codes = printed_in, [read["code"]]
        batch_options(db, batch)
        gone = store.void(db, batch, codes, reason, now_ms())
    words = "1 label of batch {} is" if len(gone) == 1 else f"{len(gone)} labels of batch {{}} are"
    print(f"{words.format(batch)} out of use.")


def _opened(data: Path) -> Database:
    folder = folder_with_data(data)
    folder.prepare()
    return folder.open()


def _checked_out(out: Path | None) -> Path:
    if out is None:
        raise CommandRefused("--out is missing. Name the file to write; it ends in .svg or .pdf.")
    if out.suffix.lower().lstrip(".") not in FORMATS:
        raise CommandRefused(f"--out {out} ends in neither .svg nor .pdf. Give it one of the two.")
    if not out.parent.is_dir():
        raise CommandRefused(f"--out {out}: the folder {out.parent} does not exist. Make it first.")
    return out
