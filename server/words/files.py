"""The Fluent files of each language as they lie here; needs no Fluent library, so a build can read them."""

import functools
import re
from collections.abc import Collection
from pathlib import Path

#: The language that stands in where another one lacks a message.
FIRST = "en"

FOLDER = Path(__file__).resolve().parent

_COMMENT = re.compile(r"^#.*\n?", re.MULTILINE)
_ENTRY = re.compile(r"^(?=(-?[a-zA-Z][\w-]*) *=)", re.MULTILINE)
_BLANKS_INSIDE = re.compile(r"(\{) +| +(\})")
_EMPTY_BEFORE_A_MESSAGE = re.compile(r"\n(?: *\n)+(?=\S|$)")


#: Areas that only the server's machine says, in a terminal or an answer; no phone needs them.
AT_THE_SERVER = {"case", "commands", "keeping", "lessons", "register", "server", "serving", "slips"}
#: Areas of which a page carries the words itself.
IN_A_PAGE = {"plain"}


@functools.cache
def languages() -> list[str]:
    """Returns the languages that there are, as their folders are called."""
    return sorted(each.parent.name for each in FOLDER.glob("*/figures.ftl"))


def source_of(language: str, without: Collection[str] = ()) -> str:
    """Returns the messages of a language as one Fluent text, some areas left out."""
    files = sorted((FOLDER / language).glob("*.ftl"))
    return "\n".join(file.read_text("utf-8") for file in files if file.stem not in without)


def entries_of(text: str) -> dict[str, str]:
    """Returns the text of each message by its id, and of each term by `-` and its id, without comments.

    Only an entry begins at the beginning of a line with a name and an equals sign, as Fluent's syntax has
    it. Of an id that is there twice the first counts.
    """
    _, *parts = _ENTRY.split(_COMMENT.sub("", text))
    entries: dict[str, str] = {}
    for name, entry in zip(parts[::2], parts[1::2], strict=True):
        entries.setdefault(name, entry)
    return entries


def sent_source_of(language: str) -> bytes:
    """Returns what a phone says of a language, without comments and empty lines."""
    text = _BLANKS_INSIDE.sub(r"\1\2", _COMMENT.sub("", source_of(language, AT_THE_SERVER | IN_A_PAGE)))
    return _EMPTY_BEFORE_A_MESSAGE.sub("\n", text).lstrip().encode()
