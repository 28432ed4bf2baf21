"""The Fluent files as whoever edits them sees them: each message, its arguments, comment and limits."""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from dataclasses import field

from fluent.syntax import FluentParser
from fluent.syntax import ast
from fluent.syntax import visitor

from server.words.files import FOLDER

_EXAMPLE = re.compile(r"^\$(?P<name>[\w-]+)(?: \((?P<kind>count)\))?: (?P<text>.+)$", re.MULTILINE)
_AT_MOST = re.compile(r"\bat most (?P<number>\d+) characters\b")


@dataclass(frozen=True)
class Source:
    """One message of one language, as it is written."""

    area: str
    id: str
    arguments: frozenset[str]
    #: By the name of the argument, what its comment gives as an example; a count as an integer.
    examples: dict[str, str | int] = field(default_factory=dict)
    #: Characters that its place has room for.
    room: int | None = None

    def known(self) -> frozenset[str]:
        """Returns what the message may use: its arguments, and those that only its comment names."""
        return self.arguments | set(self.examples)


class _Arguments(visitor.Visitor):
    def __init__(self) -> None:
        self.names: set[str] = set()

    def visit_VariableReference(self, node: ast.VariableReference) -> None:  # noqa: N802 (the library's name)
        self.names.add(node.id.name)


def sources(language: str) -> Iterator[Source]:
    """Yields all messages of a language; a file with a fault raises `ValueError` with file and place."""
    for file in sorted((FOLDER / language).glob("*.ftl")):
        for entry in FluentParser().parse(file.read_text("utf-8")).body:
            if isinstance(entry, ast.Junk):
                wrong = entry.annotations[0]
                raise ValueError(
                    f"{language}/{file.name}: {wrong.message}: {(entry.content or '').strip()[:60]!r}"
                )
            if isinstance(entry, ast.Message):
                yield _source(file.stem, entry)


def _source(area: str, message: ast.Message) -> Source:
    found = _Arguments()
    found.visit(message)
    comment = (message.comment.content or "") if message.comment else ""
    examples: dict[str, str | int] = {
        each["name"]: int(each["text"]) if each["kind"] else each["text"]
        for each in _EXAMPLE.finditer(comment)
    }
    room = _AT_MOST.search(comment)
    return Source(
        area, message.id.name, frozenset(found.names), examples, int(room["number"]) if room else None
    )
