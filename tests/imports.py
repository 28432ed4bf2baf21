"""Who imports whom in a package, read off its source: for the tests that hold a package to its floors.

A floor is a tuple of the folders (or modules) that stand side by side on it; FLOORS lists them from the top
down. An import runs down only: what stands on one floor does not import what stands beside it, but the
modules of one folder import one another as they like, as long as no circle comes of it. A folder or module
inside a folder may have a floor of its own; the longest name that fits a module is its place. Imports inside
functions count like all others. `tests/server/test_floors.py` shows the use:

    graph = import_graph("server.core", ROOT)
    assert faults(graph, "server.core", FLOORS) == []
    assert circles(graph) == []
"""

import ast
from collections.abc import Collection
from collections.abc import Iterator
from pathlib import Path

Floors = tuple[tuple[str, ...], ...]
Graph = dict[str, set[str]]


def import_graph(package: str, root: Path, leave_out: tuple[str, ...] = ()) -> Graph:
    """Returns each module of a package with those of the package that it imports, by full dotted names.

    A package's own name stands for its `__init__`. What begins with a name in `leave_out` is left out.
    """
    files = {}
    for file in sorted(root.joinpath(*package.split(".")).rglob("*.py")):
        parts = file.relative_to(root).with_suffix("").parts
        name = ".".join(parts[:-1] if parts[-1] == "__init__" else parts)
        if not any(_is_in(name, each) for each in leave_out):
            files[name] = file
    return {name: _imported(name, file, files.keys()) for name, file in files.items()}


def faults(graph: Graph, package: str, floors: Floors) -> list[str]:
    """Returns a line for each import that does not run down, and for each module or name without a place."""
    places = {name: height for height, names in enumerate(reversed(floors)) for name in names}
    lines = []
    place_of = {}
    for module in sorted(graph):
        inside = module[len(package) + 1 :]
        fits = [name for name in places if _is_in(inside, name)]
        if fits:
            place_of[module] = max(fits, key=len)
        elif inside:
            lines.append(f"{module} stands on no floor")
    lines += [
        f"{name} is on a floor, and no module is in it" for name in sorted(places.keys() - place_of.values())
    ]
    for module, place in place_of.items():
        for target in sorted(graph[module]):
            there = place_of.get(target, place)
            if there != place and places[there] >= places[place]:
                lines.append(f"{module} imports {target}, which does not stand below it")
    return lines


def circles(graph: Graph) -> list[list[str]]:
    """Returns the groups of modules that import one another, each in the order of their names."""
    reached = {module: _reached(graph, module) for module in graph}
    groups = {
        tuple(sorted(other for other in reached[module] if module in reached[other]))
        for module in graph
        if module in reached[module]
    }
    return [list(group) for group in sorted(groups)]


def _reached(graph: Graph, module: str) -> set[str]:
    """Returns every module that importing `module` leads to; itself only where there is a way back."""
    reached: set[str] = set()
    waiting = sorted(graph[module])
    while waiting:
        name = waiting.pop()
        if name not in reached:
            reached.add(name)
            waiting += graph[name]
    return reached


def _imported(module: str, file: Path, known: Collection[str]) -> set[str]:
    package = module if file.name == "__init__.py" else module.rpartition(".")[0]
    names = set()
    for node in ast.walk(ast.parse(file.read_text("utf-8"))):
        for name in _named(node, package):
            while name and name not in known:
                name = name.rpartition(".")[0]
            names.add(name)
    return names - {"", module}


def _named(node: ast.AST, package: str) -> Iterator[str]:
    """Yields what an import statement names, as dotted names; the last part may be no module."""
    if isinstance(node, ast.Import):
        yield from (each.name for each in node.names)
    elif isinstance(node, ast.ImportFrom):
        above = package.split(".")[: len(package.split(".")) - node.level + 1] if node.level else []
        base = ".".join([*above, *(node.module.split(".") if node.module else [])])
        yield from (f"{base}.{each.name}" for each in node.names)


def _is_in(name: str, folder: str) -> bool:
    return name == folder or name.startswith(f"{folder}.")
