"""Decisions of the counter as CSV: one line each, in the order of the day list.

`serial` is the one on record, `serial read` what was read at the counter, as it was read; `host` is the shop
whose label it is where that is another one. New columns come last, for sheets that count columns.
"""

from datetime import UTC
from datetime import datetime
from datetime import tzinfo

from server.web.csv_files import csv_text

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
    "serial read",
    "host",
)


def decisions_csv(lines: list[dict], zone: tzinfo) -> str:
    """Returns the lines of the day list as the text of a CSV file, times in `zone`."""
    return csv_text(COLUMNS, (_cells(line, zone) for line in lines))


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
        line["serial_read"],
        line["host"],
    ]
