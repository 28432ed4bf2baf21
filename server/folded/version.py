"""Which fold made the folded state: a hash over the core's files that folding and its search need.

Words and reasoning change often and fold nothing: only a change to the modules that folding needs, or that
say what is found by which words, makes the kept state worthless.
"""

import ast
import hashlib
from functools import cache
from pathlib import Path

_CORE = Path(__file__).resolve().parents[1] / "core"


@cache
def fold_version() -> str:
    """Returns the hash of `facts/fold.py` and `views/search.py` of the core and of all that they import."""
    digest = hashlib.sha256()
    for name, source in sorted({**_sources("facts", "fold"), **_sources("views", "search")}.items()):
        digest.update(f"{name} {len(source)}\n{source}".encode())
    return digest.hexdigest()


def _sources(*first: str) -> dict[str, str]:
    sources: dict[str, str] = {}
    waiting: list[tuple[str, ...]] = [first]
    while waiting:
        parts = waiting.pop()
        file = _CORE.joinpath(*parts).with_suffix(".py")
        name = file.relative_to(_CORE).as_posix()
        if name not in sources:
            sources[name] = file.read_text("utf-8")
            waiting += _imported(sources[name], tuple(file.relative_to(_CORE).parent.parts))
    return sources


def _imported(source: str, package: tuple[str, ...]) -> list[tuple[str, ...]]:
    """Returns the modules of the core that a module in a package of it imports, as parts of a path."""
    modules: list[tuple[str, ...]] = []
    for node in ast.walk(ast.parse(source)):
        if isinstance(node, ast.ImportFrom) and node.level:
            above = package[: len(package) - node.level + 1]
            base = above + tuple(node.module.split(".")) if node.module else above
            # A name may be a module of the room it comes from; the `__init__` of a room only describes it.
            named = [base, *((*base, each.name) for each in node.names)]
            modules += [each for each in named if _is_module(each)]
    return modules


def _is_module(parts: tuple[str, ...]) -> bool:
    return bool(parts) and _CORE.joinpath(*parts).with_suffix(".py").is_file()
