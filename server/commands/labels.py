"""`swaptrail labels`: prints new labels, lists what became of the printed ones, takes some out of use."""

import argparse
import re
from contextlib import closing
from datetime import UTC
from datetime import datetime
from pathlib import Path

from sqlite_utils import Database

from server.clock import now_ms
from server.core import labels
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
from server.storage.durable import sync_file


def add_options(command: argparse.ArgumentParser) -> None:
    """Adds the options of the command."""
    what = command.add_mutually_exclusive_group(required=True)
    what.add_argument("--count", type=int, metavar="N", help="print so many new labels")
    what.add_argument("--list", action="store_true", help="show the batches and what became of them")
    what.add_argument(
        "--again", type=int, metavar="BATCH", help="write the labels of a batch that are on no sensor again"
    )
    what.add_argument(
        "--void", metavar="CODE|BATCH", help="take a label, or what is left of a batch, out of use"
    )
    command.add_argument("--out", type=Path, metavar="FILE", help="ends in .svg or .pdf")
    command.add_argument("--reason", default="", metavar="TEXT", help="why it goes out of use")
    command.add_argument(
        "--distance", default=str(USUAL_CM), metavar="CM", help=f"scanned from so far ({USUAL_CM})"
    )
    layout = command.add_argument_group("layout")
    layout.add_argument("--paper", metavar="|".join(PAPERS), help="a sheet (a4)")
    layout.add_argument("--grid", metavar="CxR", help="columns and rows (as many as fit)")
    layout.add_argument("--label", metavar="WxH", help="size of a label on a sheet, mm (26x32)")
    layout.add_argument("--margin", metavar="LxT", help="from the paper's left and upper edge, mm")
    layout.add_argument("--gap", metavar="AxD", help="between columns and between rows, mm (0x0)")
    layout.add_argument(
        "--precut", action="store_const", const="yes", help="the sheet is cut already: no marks, no note"
    )
    layout.add_argument("--roll", metavar="WxH", help="a roll with one label a page, mm")
    layout.add_argument(
        "--dpi", metavar="|".join(map(str, DPIS)), help="dots of the printer (roll 203, sheet 300)"
    )
    command.set_defaults(run=run)


def run(asked: argparse.Namespace) -> None:
    """Does the one thing that is asked for."""
    if asked.list:
        _list(asked.data)
    elif asked.void is not None:
        _void(asked.data, asked.void, asked.reason)
    else:
        _print(asked)


def _print(asked: argparse.Namespace) -> None:
    options = {name: value for name in OPTIONS if (value := getattr(asked, name))}
    distance = checked_distance(asked.distance)
    layout = layout_of(options)
    _check_out(asked.out)
    if asked.count is None:
        _must_exist(asked.data)
    elif not 1 <= asked.count <= store.MOST_LABELS:
        raise CommandRefused(f"--count {asked.count} is out of range. Take 1 to {store.MOST_LABELS}.")
    base = settled_base(asked.data, None, None)
    with closing(DataFolder(asked.data).open()) as db:
        if asked.count is None and not options:
            layout = layout_of(batch_options(db, asked.again))
        face = face_for(layout, base, distance)
        if asked.count is None:
            printing = store.again(db, asked.again, now_ms())
        else:
            printing = store.issue(db, asked.count, base, options, now_ms())
        _write(asked.out, printing, base, layout, face)
        store.done(db, printing.id, now_ms())
    print(f"Batch {printing.batch}: {len(printing.codes)} labels for {base},")
    print(f"an address that stays with the data in {asked.data}.")
    print(summary(layout, face))
    if asked.count is None:
        print("These were written before: destroy what was printed of them, so that none is on two sensors.")
        print("A phone that has not sent yet may have used some.")
    found = warnings(layout, face, distance)
    for warning in found:
        print(f"Warning: {warning}")
    if found:
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
    _must_exist(data)
    with closing(_opened(data)) as db:
        found = batches(db)
    if not found:
        print("No labels were printed here yet.")
        return
    print(f"{'batch':>5}  {'made (UTC)':16}  {'labels':>6}  {FREE:>8}  {ON:>11}  {VOID:>5}  layout")
    for batch in found:
        made = datetime.fromtimestamp(batch.made_at / 1000, UTC).strftime("%Y-%m-%d %H:%M")
        counts = batch.counts
        print(
            f"{batch.id:>5}  {made:16}  {sum(counts.values()):>6}  {counts[FREE]:>8}  {counts[ON]:>11}  "
            f"{counts[VOID]:>5}  {layout_of(batch.options).words}"
        )
        if not batch.finished:
            print(f"       its file was never finished: --again {batch.id} writes it")


def _void(data: Path, what: str, reason: str) -> None:
    _must_exist(data)
    with closing(_opened(data)) as db:
        if re.fullmatch(r"[0-9]{1,9}", what) and labels.parse(what)["outcome"] != "ours":
            batch, codes = int(what), []
        else:
            read = labels.parse(what)
            if read["outcome"] != "ours":
                raise CommandRefused(f"--void {what}: {read['sentence']}")
            found = store.batch_with(db, read["code"])
            if found is None:
                raise CommandRefused(f"--void {what}: this label was not printed here.")
            batch, codes = found, [read["code"]]
        batch_options(db, batch)
        gone = store.void(db, batch, codes, reason, now_ms())
    words = "1 label of batch {} is" if len(gone) == 1 else f"{len(gone)} labels of batch {{}} are"
    print(f"{words.format(batch)} out of use.")


def _opened(data: Path) -> Database:
    folder = DataFolder(data)
    folder.prepare()
    return folder.open()


def _must_exist(data: Path) -> None:
    if not DataFolder(data).database.is_file():
        raise CommandRefused(f"{data} holds no data of this program. Name the folder with --data.")


def _check_out(out: Path | None) -> None:
    if out is None:
        raise CommandRefused("--out is missing. Name the file to write; it ends in .svg or .pdf.")
    if out.suffix.lower().lstrip(".") not in FORMATS:
        raise CommandRefused(f"--out {out} ends in neither .svg nor .pdf. Give it one of the two.")
    if not out.parent.is_dir():
        raise CommandRefused(f"--out {out}: the folder {out.parent} does not exist. Make it first.")
