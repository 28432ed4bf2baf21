"""`swaptrail reason CASE.json`: the engine alone, a case in, its answer out."""

import json
import sys
from pathlib import Path
from typing import Any

from server.core.errors import BadInput
from server.core.reason import reason
from server.core.reason import to_decimals
from server.refusals import CommandRefused


def run(case: str) -> None:
    """Prints the answer to the case in a file, `-` for standard input."""
    answer = to_decimals(reason(_read(case)))
    print(json.dumps(answer, indent=2, ensure_ascii=False))


def _read(case: str) -> Any:
    try:
        data = sys.stdin.buffer.read() if case == "-" else Path(case).read_bytes()
    except OSError as error:
        raise CommandRefused(f"{case} cannot be read: {error.strerror}. Name a JSON file.") from None
    try:
        return json.loads(data, parse_constant=_no_constant)
    except json.JSONDecodeError as error:
        found = f"{error.msg} at line {error.lineno}, column {error.colno}"
    except (ValueError, RecursionError):
        found = "bytes that are no JSON text"
    raise CommandRefused(f"case: found {found}, wanted one JSON object as in the README") from None


def _no_constant(name: str) -> float:
    raise BadInput("case", name, "numbers that JSON knows; NaN and Infinity are none")
