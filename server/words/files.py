"""The Fluent files of each language as they lie here; needs no Fluent library, so a build can read them."""

import re
from pathlib import Path

#: The language that stands in where another one lacks a message.
FIRST = "en"

FOLDER = Path(__file__).resolve().parent

_COMMENT = re.compile(r"^#.*\n?", re.MULTILINE)
_EMPTY_BEFORE_A_MESSAGE = re.compile(r"\n(?: *\n)+(?=\S|$)")


def languages() -> list[str]:
    """Returns the languages that there are, as their folders are called."""
    return sorted(each.parent.name for each in FOLDER.glob("*/figures.ftl"))


def source_of(language: str) -> str:
    """Returns all messages of a language as one Fluent text."""
    return "\n".join(file.read_text("utf-8") for file in sorted((FOLDER / language).glob("*.ftl")))


def sent_source_of(language: str) -> bytes:
    """Returns all messages of a language as a phone gets them: without comments and empty lines."""
    return _EMPTY_BEFORE_A_MESSAGE.sub("\n", _COMMENT.sub("", source_of(language))).lstrip().encode()
