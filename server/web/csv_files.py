"""Tables as CSV by RFC 4180, for spreadsheets.

They run a cell that begins like a formula. Such a cell gets an apostrophe in front, which they take as 'this
is text'; what a person entered at a counter must never compute on another machine. Every cell is quoted: a
spreadsheet that splits at semicolons would else begin a new cell inside one.
"""

import csv
import io
from collections.abc import Iterable

from flask import Response

# What spreadsheets take for the beginning of a formula (OWASP, 'CSV Injection').
_FORMULA = ("=", "+", "-", "@", "\t", "\r", "\n", "\uff1d", "\uff0b", "\uff0d", "\uff20")
_MARK = "\ufeff"  # without it spreadsheets read the bytes of UTF-8 as letters of an older set


def csv_text(columns: tuple[str, ...], rows: Iterable[list[str]]) -> str:
    """Returns the text of a file that begins with a line of names."""
    file = io.StringIO()
    writer = csv.writer(file, lineterminator="\r\n", quoting=csv.QUOTE_ALL)
    writer.writerow(columns)
    for row in rows:
        writer.writerow([_harmless(cell) for cell in row])
    return file.getvalue()


def csv_answer(text: str, name: str) -> Response:
    """Sends a file under a name."""
    response = Response(_MARK + text, mimetype="text/csv")
    response.headers["Content-Type"] = "text/csv; charset=utf-8; header=present"
    response.headers["Content-Disposition"] = f'attachment; filename="{name}"'
    return response


def _harmless(cell: str) -> str:
    return f"'{cell}" if cell.startswith(_FORMULA) else cell
