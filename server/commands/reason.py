"""`swaptrail reason CASE.json`: the engine alone, JSON in, JSON out.

Bad input of any kind ends with exit code 2 and one line that names the field, what was found and
what is wanted, so that a script can rely on it.
"""

import json
import sys
from contextlib import nullcontext

import click

from server.commands.options import WordedCommand
from server.commands.options import language_option
from server.core.errors import BadInput
from server.core.infer.decimals import to_decimals
from server.core.messages import message
from server.core.plan.answer import reason
from server.words.spoken import spoken
from server.words.spoken import text

# As many as a case of sixteen suspects can have.
_MOST_EXPLANATIONS = 65536
_LARGEST_FILE = 5_000_000


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
        raise BadInput(path, message("case-file-none"), message("case-file")) from None
    except OSError as error:
        raise BadInput(path, error.strerror or message("case-file-no-access"), message("case-file")) from None
    if len(content) > _LARGEST_FILE:
        raise BadInput(
            path, message("case-file-larger"), message("case-file-at-most", most=str(_LARGEST_FILE))
        )
    try:
        text = content.decode("utf-8")
    except UnicodeDecodeError as error:
        raise BadInput(path, message("case-bytes", at=str(error.start)), message("case-utf-8")) from None
    try:
        return json.loads(text, object_pairs_hook=_object, parse_constant=_refuse_constant)
    except json.JSONDecodeError as error:
        found = message("case-no-json", wrong=error.msg, line=str(error.lineno), column=str(error.colno))
        raise BadInput(path, found, message("refusals-json")) from None
    except RecursionError:
        raise BadInput(path, message("case-nested"), message("case-case")) from None
    except ValueError:
        # A whole number of thousands of digits, which Python declines to read.
        raise BadInput(path, message("case-number-long"), message("case-number")) from None


def _object(pairs: list) -> dict:
    """Build an object, refusing a key that comes twice: one of the two would be lost."""
    built = {}
    for key, value in pairs:
        if key in built:
            raise BadInput(key, message("case-key-twice"), message("case-key-once"))
        built[key] = value
    return built


def _refuse_constant(name: str):
    raise BadInput("case", name, message("case-json-numbers"))


def _on_one_line(message: str) -> str:
    return " ".join(message.split())
