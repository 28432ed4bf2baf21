"""Which fold made the folded state: a hash over the core's files that folding needs.

Wording and reasoning change often and fold nothing; only a change to the fold itself makes the
kept state worthless.
"""

import ast
import hashlib
from functools import cache
from pathlib import Path

_CORE = Path(__file__).resolve().parents[1] / "core"


@cache
def fold_version() -> str:
    """Returns the hash of `server/core/fold.py` and everything that it imports."""
    digest = hashlib.sha256()
    for name, source in sorted(_sources("fold").items()):
        digest.update(f"{name} {len(source)}\n{source}".encode())
    return digest.hexdigest()


def _sources(first: str) -> dict[str, str]:
    found: dict[str, str] = {}
    waiting = [first]
    while waiting:
        name = waiting.pop()
        if name not in found:
            found[name] = (_CORE / f"{name}.py").read_text("utf-8")
            waiting += _imported(found[name])
    return found


def _imported(source: str) -> list[str]:
    """Returns the modules of the core that a module of it imports."""
    names: list[str] = []
    for node in ast.walk(ast.parse(source)):
        if isinstance(node, ast.ImportFrom) and node.level == 1:
            names += [node.module] if node.module else [alias.name for alias in node.names]
    return names
