"""`swaptrail reason CASE.json`: the engine alone, JSON in, JSON out.

Bad input of any kind ends with exit code 2 and one line that names the field, what was found and
what is wanted, so that a script can rely on it.
"""

import json
import sys
from collections import namedtuple
from contextlib import nullcontext

import click

from server.commands.options import WordedCommand
from server.commands.options import language_option
from server.core.errors import BadInput
from server.core.infer.decimals import to_decimals
from server.core.log import canon
from server.core.messages import message
from server.core.plan.answer import reason
from server.words.spoken import spoken
from server.words.spoken import text

# As many as a case of sixteen suspects can have.
_MOST_EXPLANATIONS = 65536
_LARGEST_FILE = 5_000_000
_MOST_DIGITS = 400


@click.command("reason", cls=WordedCommand, help="commands-reason-help")
@click.argument("case", metavar="CASE.json")
@language_option
def command(case: str) -> int:
    """Runs the reasoning alone."""
    return run(case)


def run(path: str) -> int:
    """Print what the case in the file says; return the exit code."""
    try:
        answer = reason(read_case(path), most=_MOST_EXPLANATIONS)
    except BadInput as error:
        print(_on_one_line(text(error.message())), file=sys.stderr)
        return 2
    print(json.dumps(to_decimals(spoken().render(answer)), indent=2, ensure_ascii=False))
    return 0


def read_case(path: str):
    """Return the JSON value in the file, in standard input at `-`; what is no plain JSON is bad input."""
    try:
        with nullcontext(sys.stdin.buffer) if path == "-" else open(path, "rb") as file:
            content = file.read(_LARGEST_FILE + 1)
    except FileNotFoundError:
        raise BadInput(path, (message("case-file-none"),), message("case-file")) from None
    except OSError as error:
        raise BadInput(
            path, (error.strerror or message("case-file-no-access"),), message("case-file")
        ) from None
    if len(content) > _LARGEST_FILE:
        raise BadInput(
            path, (message("case-file-larger"),), message("case-file-at-most", most=str(_LARGEST_FILE))
        )
    try:
        text = content.decode("utf-8")
    except UnicodeDecodeError as error:
        raise BadInput(path, (message("case-bytes", at=str(error.start)),), message("case-utf-8")) from None
    try:
        case = json.loads(text, object_pairs_hook=_object, parse_constant=_constant, parse_int=_whole_number)
        _hold_plain(case, "")
    except json.JSONDecodeError as error:
        found = message("case-no-json", wrong=error.msg, line=str(error.lineno), column=str(error.colno))
        raise BadInput(path, (found,), message("refusals-json")) from None
    except RecursionError:
        raise BadInput(path, (message("case-nested"),), message("case-case")) from None
    return case


# Stands for what Python reads and no plain JSON has, until its field is known.
_Amiss = namedtuple("_Amiss", ("found", "wanted"))


def _constant(name: str) -> _Amiss:
    return _Amiss(name, message("case-json-numbers"))


def _whole_number(digits: str) -> int | _Amiss:
    if len(digits) > _MOST_DIGITS:
        return _Amiss(message("case-number-long"), message("case-number"))
    return int(digits)


def _object(pairs: list) -> dict:
    """Build an object; of a key that comes twice one value would be lost."""
    built: dict = {}
    for key, value in pairs:
        twice = _Amiss(message("case-key-twice"), message("case-key-once"))
        built[key] = twice if key in built else value
    return built


def _hold_plain(value, field: str) -> None:
    """Refuse, by its field, what was read and no plain JSON has."""
    if isinstance(value, _Amiss):
        raise BadInput(field or "case", (value.found,), value.wanted)
    if isinstance(value, str):
        _hold_whole(value, field)
    elif isinstance(value, list):
        for n, each in enumerate(value):
            _hold_plain(each, f"{field or 'case'}[{n}]")
    elif isinstance(value, dict):
        for key in value:
            here = f"{field}.{key}" if field else key
            _hold_whole(key, field)
            _hold_plain(value[key], here)


def _hold_whole(text: str, field: str) -> None:
    """Refuse half of a character pair, which nothing can print."""
    if canon.whole(text) != text:
        half = message("refusals-found-half-pair")
        raise BadInput(field or "case", (half,), message("refusals-whole-characters"))


def _on_one_line(message: str) -> str:
    return " ".join(message.split())
