"""The core keeps to what both hosts can run: no missing modules, no syntax, no unordered iteration."""

import ast
from pathlib import Path

import pytest

CORE = Path(__file__).parents[2] / "server" / "core"
FILES = sorted(CORE.rglob("*.py"))
ALLOWED = {"json", "math", "collections", "hashlib"}
MISSING_IN_MATH = {"gcd", "isqrt", "comb", "prod", "fsum", "log1p", "lcm", "dist"}
MISSING_IN_STR = {"removeprefix", "removesuffix", "casefold", "zfill", "ljust", "rjust", "title"}


@pytest.fixture(params=FILES, ids=[str(file.relative_to(CORE)) for file in FILES])
def tree(request):
    return ast.parse(request.param.read_text("utf-8"))


def test_imports_nothing_but_four_modules_and_itself(tree):
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            assert {alias.name for alias in node.names} <= ALLOWED
        elif isinstance(node, ast.ImportFrom):
            assert node.level > 0 or node.module in ALLOWED


def test_uses_no_syntax_that_the_phone_lacks(tree):
    for node in ast.walk(tree):
        assert not isinstance(node, ast.Match | ast.TryStar | ast.AsyncFunctionDef)
        if isinstance(node, ast.arguments):
            assert not node.posonlyargs
        if isinstance(node, ast.Dict):
            assert None not in node.keys, "{**a} is a syntax error on the phone"
        if isinstance(node, ast.Raise):
            assert node.cause is None, "raise ... from loses its cause on the phone"
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Name):
            if node.func.id == "isinstance":
                assert not isinstance(node.args[1], ast.BinOp), "isinstance(x, a | b)"
            assert node.func.id not in {"round", "sum"}, "differs between the hosts"


def test_calls_nothing_that_the_phone_lacks(tree):
    for node in ast.walk(tree):
        if isinstance(node, ast.Attribute):
            if isinstance(node.value, ast.Name) and node.value.id == "math":
                assert node.attr not in MISSING_IN_MATH
            assert node.attr not in MISSING_IN_STR
            assert node.attr not in {"hexdigest", "_asdict", "_replace"}


def test_sorts_by_what_is_never_equal(tree):
    """`sorted` is not stable on the phone, so a key must be total: a tuple, or none at all."""
    for node in ast.walk(tree):
        if isinstance(node, ast.Call):
            name = getattr(node.func, "id", getattr(node.func, "attr", ""))
            if name in {"sorted", "sort"}:
                for keyword in node.keywords:
                    if keyword.arg == "key" and isinstance(keyword.value, ast.Lambda):
                        assert isinstance(keyword.value.body, ast.Tuple)


def test_the_core_has_files_to_look_at():
    assert len(FILES) > 20
