"""The core keeps to what both hosts can run: no missing modules, no syntax, no unordered iteration."""

import ast
from pathlib import Path

import pytest

CORE = Path(__file__).parents[2] / "server" / "core"
ALLOWED = {"json", "math", "collections", "hashlib"}
MISSING_IN_MATH = {"gcd", "isqrt", "comb", "prod", "fsum", "log1p", "lcm", "dist"}
MISSING_IN_STR = {"removeprefix", "removesuffix", "casefold", "zfill", "ljust", "rjust", "title"}


@pytest.fixture(scope="module")
def nodes():
    """Give every node of the core's source, each with its file: read once for all tests."""
    return [
        (file.relative_to(CORE).as_posix(), node)
        for file in sorted(CORE.rglob("*.py"))
        for node in ast.walk(ast.parse(file.read_text("utf-8")))
    ]


def objections(nodes, check):
    """Return "file:line: what is wrong" for each node of which `check` says what is wrong."""
    found = ((file, node, check(node)) for file, node in nodes)
    return [f"{file}:{getattr(node, 'lineno', '?')}: {wrong}" for file, node, wrong in found if wrong]


def imported(node):
    if isinstance(node, ast.Import):
        return ", ".join({alias.name for alias in node.names} - ALLOWED)
    if isinstance(node, ast.ImportFrom) and not node.level and node.module not in ALLOWED:
        return node.module
    return ""


def syntax(node):
    if isinstance(node, ast.Match | ast.TryStar | ast.AsyncFunctionDef):
        return type(node).__name__
    if isinstance(node, ast.Lambda | ast.FunctionDef) and node.args.posonlyargs:
        return "arguments by position alone"
    if isinstance(node, ast.Dict) and None in node.keys:
        return "{**a} is a syntax error on the phone"
    if isinstance(node, ast.Raise) and node.cause is not None:
        return "raise ... from loses its cause on the phone"
    if isinstance(node, ast.Call) and isinstance(node.func, ast.Name):
        if node.func.id == "isinstance" and isinstance(node.args[1], ast.BinOp):
            return "isinstance(x, a | b)"
        if node.func.id in {"round", "sum"}:
            return f"{node.func.id} differs between the hosts"
    return ""


def called(node):
    if not isinstance(node, ast.Attribute):
        return ""
    is_of_math = isinstance(node.value, ast.Name) and node.value.id == "math"
    lacking = (
        MISSING_IN_STR | {"hexdigest", "_asdict", "_replace"} | (MISSING_IN_MATH if is_of_math else set())
    )
    return node.attr if node.attr in lacking else ""


def sorted_by(node):
    if isinstance(node, ast.Call) and getattr(node.func, "id", getattr(node.func, "attr", "")) in {
        "sorted",
        "sort",
    }:
        for keyword in node.keywords:
            is_lambda = keyword.arg == "key" and isinstance(keyword.value, ast.Lambda)
            if is_lambda and not isinstance(keyword.value.body, ast.Tuple):
                return "the key is no tuple"
    return ""


def test_imports_nothing_but_four_modules_and_itself(nodes):
    assert objections(nodes, imported) == []


def test_uses_no_syntax_that_the_phone_lacks(nodes):
    assert objections(nodes, syntax) == []


def test_calls_nothing_that_the_phone_lacks(nodes):
    assert objections(nodes, called) == []


def test_sorts_by_what_is_never_equal(nodes):
    """`sorted` is not stable on the phone, so a key must be total: a tuple, or none at all."""
    assert objections(nodes, sorted_by) == []


@pytest.mark.parametrize(
    ("check", "source"),
    [
        (imported, "import os"),
        (imported, "from typing import Any"),
        (syntax, "match a:\n  case 1: pass"),
        (syntax, "def f(a, /): pass"),
        (syntax, "{**a}"),
        (syntax, "try: pass\nexcept E as e: raise F from e"),
        (syntax, "isinstance(a, int | str)"),
        (syntax, "round(a)"),
        (called, "math.prod(a)"),
        (called, "a.zfill(3)"),
        (called, "a.hexdigest()"),
        (sorted_by, "sorted(a, key=lambda each: each.n)"),
        (sorted_by, "a.sort(key=lambda each: each.n)"),
    ],
)
def test_what_is_looked_for_is_found(check, source):
    made_up = [("made_up.py", node) for node in ast.walk(ast.parse(source))]
    [found] = objections(made_up, check)
    assert found.startswith("made_up.py:")


def test_the_core_has_files_to_look_at(nodes):
    assert len({file for file, _ in nodes}) > 20
