"""Decisions of the counter as CSV by RFC 4180: one line each, in the order of the day list.

Spreadsheets run a cell that begins like a formula. Such a cell gets an apostrophe in front, which they
take as 'this is text'; what a person entered at a counter must never compute on another machine. Every cell
is quoted: a spreadsheet that splits at semicolons would else begin a new cell inside one.
"""

import csv
import io
from datetime import UTC
from datetime import datetime
from datetime import tzinfo

COLUMNS = (
    "date",
    "time",
    "utc",
    "code",
    "part",
    "serial",
    "vehicle",
    "complaint",
    "decision",
    "proposed",
    "against",
    "overruled because",
    "signed",
    "label read",
    "stands",
    "decided twice",
    "job",
    "entry",
)
# What spreadsheets take for the beginning of a formula (OWASP, 'CSV Injection').
_FORMULA = ("=", "+", "-", "@", "\t", "\r", "\n", "\uff1d", "\uff0b", "\uff0d", "\uff20")


def decisions_csv(lines: list[dict], zone: tzinfo) -> str:
    """Returns the lines of the day list as the text of a CSV file, times in `zone`."""
    file = io.StringIO()
    writer = csv.writer(file, lineterminator="\r\n", quoting=csv.QUOTE_ALL)
    writer.writerow(COLUMNS)
    for line in lines:
        writer.writerow([harmless(cell) for cell in _cells(line, zone)])
    return file.getvalue()


def _cells(line: dict, zone: tzinfo) -> list[str]:
    utc = datetime.fromtimestamp(line["at"] / 1000, UTC)
    local = utc.astimezone(zone)
    return [
        local.date().isoformat(),
        local.strftime("%H:%M:%S"),
        utc.strftime("%Y-%m-%dT%H:%M:%SZ"),
        line["shown"],
        line["part"],
        line["serial"],
        line["vehicle"],
        line["complaint"],
        line["decision"],
        line["proposed"],
        "; ".join(line["about"]),
        line["overrule"],
        line["signed"],
        line["how"],
        "yes" if line["stands"] else "no",
        "yes" if line["twice"] else "no",
        line["job"] or "",
        line["event"],
    ]


def harmless(cell: str) -> str:
    """Returns a cell that no spreadsheet runs."""
    return f"'{cell}" if cell.startswith(_FORMULA) else cell
