"""The Fluent files as whoever edits them sees them: each message, its arguments, comment and limits."""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from dataclasses import field
from functools import lru_cache

from fluent.syntax import FluentParser
from fluent.syntax import ast
from fluent.syntax import visitor

from server.words.files import FOLDER

_EXAMPLE = re.compile(r"^\$(?P<name>[\w-]+)(?: \((?P<kind>count)\))?: (?P<text>.+)$", re.MULTILINE)
_AT_MOST = re.compile(r"\bat most (?P<number>\d+) characters\b")


@dataclass(frozen=True)
class Source:
    """One message of one language, as it is written, or one attribute of it: `part-parking-sensor.one`."""

    area: str
    id: str
    arguments: frozenset[str]
    #: By the name of the argument, what its comment gives as an example; a count as an integer.
    examples: dict[str, str | int] = field(default_factory=dict)
    #: Characters that its place has room for.
    room: int | None = None
    #: The forms of a sort of part that it names: `PART($sort, form: "the-many")`.
    forms: frozenset[str] = frozenset()
    #: By an argument that it chooses by, the texts that it tells apart.
    choices: dict[str, tuple[str, ...]] = field(default_factory=dict)

    def known(self) -> frozenset[str]:
        """Returns what the message may use: its arguments, and those that only its comment names."""
        return self.arguments | set(self.examples)


class _Found(visitor.Visitor):
    def __init__(self) -> None:
        self.arguments: set[str] = set()
        self.forms: set[str] = set()
        self.choices: dict[str, tuple[str, ...]] = {}

    # The names are the library's.
    def visit_VariableReference(self, node: ast.VariableReference) -> None:  # noqa: N802
        self.arguments.add(node.id.name)

    def visit_FunctionReference(self, node: ast.FunctionReference) -> None:  # noqa: N802
        if node.id.name == "PART":
            named = {each.name.name: each.value.value for each in node.arguments.named}
            self.forms.add(str(named.get("form", "one")))
        self.generic_visit(node)

    def visit_SelectExpression(self, node: ast.SelectExpression) -> None:  # noqa: N802
        if isinstance(node.selector, ast.VariableReference):
            keys = (each.key for each in node.variants)
            names = tuple(key.name for key in keys if isinstance(key, ast.Identifier))
            self.choices[node.selector.id.name] = self.choices.get(node.selector.id.name, ()) + names
        self.generic_visit(node)


def sources(language: str) -> Iterator[Source]:
    """Yields all messages of a language; a file with a fault raises `ValueError` with file and place."""
    for file in sorted((FOLDER / language).glob("*.ftl")):
        yield from of_area(file.stem, language)


def of_area(area: str, language: str) -> tuple[Source, ...]:
    """Returns the messages of one area, as `sources` yields them."""
    return _parsed(area, language, (FOLDER / language / f"{area}.ftl").read_text("utf-8"))


@lru_cache(maxsize=256)  # more than there are files; parsing takes a second, and every app that is made asks
def _parsed(area: str, language: str, text: str) -> tuple[Source, ...]:
    return tuple(_messages(area, language, text))


def _messages(area: str, language: str, text: str) -> Iterator[Source]:
    for entry in FluentParser().parse(text).body:
        if isinstance(entry, ast.Junk):
            wrong = entry.annotations[0]
            raise ValueError(
                f"{language}/{area}.ftl: {wrong.message}: {(entry.content or '').strip()[:60]!r}"
            )
        if isinstance(entry, ast.Message):
            comment = (entry.comment.content or "") if entry.comment else ""
            if entry.value:
                yield _source(area, entry.id.name, entry.value, comment)
            for each in entry.attributes:
                yield _source(area, f"{entry.id.name}.{each.id.name}", each.value, comment)


def _source(area: str, name: str, pattern: ast.Pattern, comment: str) -> Source:
    found = _Found()
    found.visit(pattern)
    examples: dict[str, str | int] = {
        each["name"]: int(each["text"]) if each["kind"] else each["text"]
        for each in _EXAMPLE.finditer(comment)
    }
    room = _AT_MOST.search(comment)
    return Source(
        area,
        name,
        frozenset(found.arguments),
        examples,
        int(room["number"]) if room else None,
        frozenset(found.forms),
        found.choices,
    )
