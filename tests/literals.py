"""The texts that stand in code: string literals of Python, strings and templates of JavaScript."""

import ast
import re
from collections.abc import Iterator
from html.parser import HTMLParser
from pathlib import Path
from typing import NamedTuple

import tree_sitter_javascript
from tree_sitter import Language
from tree_sitter import Node
from tree_sitter import Parser

_WORD = re.compile(r"[^\W\d_]{2,}")
_JAVASCRIPT = Language(tree_sitter_javascript.language())
# Attributes of a template that hold no words for people.
_NO_WORDS = {"class", "d", "points", "style", "viewbox", "transform", "content", "rel", "sizes", "pattern"}
# What is said to a programmer: what these are called with.
_FOR_PROGRAMMERS = re.compile(r"(\w*Error|Broken|console\.\w+|assert)$")


class Literal(NamedTuple):
    """A text and where it stands."""

    file: Path
    line: int
    text: str


def words(text: str) -> int:
    """Return how many words a text has; a word has two letters."""
    return sum(bool(_WORD.search(part)) for part in text.split())


def python_literals(file: Path) -> Iterator[Literal]:
    """Yield the string literals of a module; docstrings and the text of assertions are left out."""
    tree = ast.parse(file.read_text("utf-8"))
    left_out = set()
    for node in ast.walk(tree):
        if isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant):
            left_out.add(node.value)
        if isinstance(node, ast.Assert) and node.msg:
            left_out.update(ast.walk(node.msg))
    for node in ast.walk(tree):
        if isinstance(node, ast.Constant) and isinstance(node.value, str) and node not in left_out:
            yield Literal(file, node.lineno, node.value)


def javascript_literals(file: Path) -> Iterator[Literal]:
    """Yield strings and what templates show; what only programmers read is left out."""
    source = file.read_bytes()
    tree = Parser(_JAVASCRIPT).parse(source)
    yield from _in_node(file, tree.root_node)


def _in_node(file: Path, node: Node) -> Iterator[Literal]:
    if node.type in {"import_statement", "comment", "regex"} or _is_for_programmers(node):
        return
    if node.type == "string":
        yield Literal(file, node.start_point.row + 1, _text(node)[1:-1])
        return
    if node.type == "template_string":
        written = "".join(
            _text(part) if part.type in {"string_fragment", "escape_sequence"} else "{}"
            for part in node.children
            if part.type not in {"`"}
        )
        if _is_markup(node):
            yield from (Literal(file, node.start_point.row + 1, shown) for shown in _shown(written))
        else:
            yield Literal(file, node.start_point.row + 1, written)
    for child in node.children:
        if child.type not in {"string_fragment"}:
            yield from _in_node(file, child)


def _is_for_programmers(node: Node) -> bool:
    if node.type == "new_expression":
        called = node.child_by_field_name("constructor")
    elif node.type == "call_expression":
        called = node.child_by_field_name("function")
    else:
        return False
    return called is not None and bool(_FOR_PROGRAMMERS.search(_text(called)))


def _is_markup(node: Node) -> bool:
    called = node.parent.child_by_field_name("function") if node.parent else None
    return called is not None and _text(called) in {"html", "svg"}


def _text(node: Node) -> str:
    return (node.text or b"").decode("utf-8")


class _Shown(HTMLParser):
    def __init__(self) -> None:
        super().__init__()
        self.texts: list[str] = []

    def handle_data(self, data: str) -> None:
        self.texts.append(data)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.texts += [value for name, value in attrs if value and name.lstrip(".?@") not in _NO_WORDS]


def _shown(markup: str) -> list[str]:
    reader = _Shown()
    reader.feed(markup)
    reader.close()
    return reader.texts
