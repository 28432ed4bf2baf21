"""Reads `static/core/views.d.ts`, where the views of the core are declared, and holds values to it.

It reads the part of TypeScript that the file keeps to: interfaces that may extend others, names for types,
unions, lists, tuples, literals, `Record`, and objects written in place.
"""

import re
from functools import cache
from pathlib import Path
from typing import Any
from typing import NamedTuple

FILE = Path(__file__).resolve().parents[2] / "static/core/views.d.ts"

_TOKEN = re.compile(r"/\*.*?\*/|//[^\n]*|\s+|(?P<token>'[^']*'|[A-Za-z_]\w*|\.\.\.|=>|.)", re.DOTALL)

_PLAIN: dict[str, tuple[type, ...]] = {
    "string": (str,),
    "number": (int, float),
    "boolean": (bool,),
    "null": (type(None),),
}


class Field(NamedTuple):
    """One field of an object."""

    type: Any
    optional: bool


class Shape(NamedTuple):
    """An object with just these fields; `name` is empty for one that is written in place."""

    name: str
    extends: tuple[str, ...]
    fields: dict[str, Field]


class Union(NamedTuple):
    """One of several."""

    types: tuple[Any, ...]


class Listed(NamedTuple):
    """A list of one type, or with `types` in their order."""

    types: tuple[Any, ...]
    fixed: bool


class Keyed(NamedTuple):
    """An object whose fields have any name and one type."""

    type: Any


class Literal(NamedTuple):
    """Just this text."""

    text: str


class Name(NamedTuple):
    """A plain type, or one that is declared elsewhere in the file."""

    name: str


class Declared:
    """The types of the file, and what was seen of them."""

    def __init__(self, text: str):
        """Read the file's text."""
        self.types = _Reader(text).types()
        self.seen: set[str] = set()

    def faults(self, type_: Any, value: Any, path: str) -> list[str]:
        """Return what is not as declared, each with its place; notes each field that it meets."""
        if isinstance(type_, Name):
            return self._of_name(type_, value, path)
        if isinstance(type_, Literal):
            return [] if value == type_.text else [f"{path}: {value!r}, not {type_.text!r}"]
        if isinstance(type_, Union):
            return self._of_union(type_, value, path)
        if isinstance(type_, Listed):
            return self._of_list(type_, value, path)
        if isinstance(type_, Keyed):
            if not isinstance(value, dict):
                return [f"{path}: {value!r} is no object"]
            return [fault for key in value for fault in self.faults(type_.type, value[key], f"{path}.{key}")]
        return self._of_shape(type_, value, path)

    def _of_name(self, type_: Name, value: Any, path: str) -> list[str]:
        if type_.name == "any":
            return []
        if type_.name in _PLAIN:
            # Python's booleans are numbers, too.
            good = isinstance(value, _PLAIN[type_.name]) and not (
                type_.name == "number" and isinstance(value, bool)
            )
            return [] if good else [f"{path}: {value!r} is no {type_.name}"]
        if type_.name == "never":
            return [f"{path}: {value!r} where nothing may stand"]
        return self.faults(self.types[type_.name], value, path)

    def _of_union(self, type_: Union, value: Any, path: str) -> list[str]:
        before = set(self.seen)
        tried = []
        for each in type_.types:
            self.seen = set(before)
            found = self.faults(each, value, path)
            if not found:
                return []
            tried.append(found)
        self.seen = before
        # Of those it was most likely meant to be.
        return min(tried, key=len)

    def _of_list(self, type_: Listed, value: Any, path: str) -> list[str]:
        if not isinstance(value, list):
            return [f"{path}: {value!r} is no list"]
        if type_.fixed and len(value) != len(type_.types):
            return [f"{path}: {len(value)} values, not {len(type_.types)}"]
        types = type_.types if type_.fixed else type_.types * len(value)
        return [
            fault
            for at, (each, one) in enumerate(zip(types, value, strict=True))
            for fault in self.faults(each, one, f"{path}[{at}]")
        ]

    def _of_shape(self, type_: Shape, value: Any, path: str) -> list[str]:
        if not isinstance(value, dict):
            return [f"{path}: {value!r} is no object"]
        fields = self.fields(type_)
        found = [f"{path}.{key} is not declared" for key in sorted(value.keys() - fields.keys())]
        for name, (owner, field) in fields.items():
            if name in value:
                self.seen.add(f"{owner}.{name}")
                found += self.faults(field.type, value[name], f"{path}.{name}")
            elif not field.optional:
                found.append(f"{path}.{name} is missing")
        return found

    def fields(self, shape: Shape) -> dict[str, tuple[str, Field]]:
        """Return all fields of an object by name, each with the interface that declares it."""
        found: dict[str, tuple[str, Field]] = {}
        for name in shape.extends:
            found |= self.fields(self.types[name])
        return found | {name: (shape.name, field) for name, field in shape.fields.items()}

    def declared_fields(self) -> set[str]:
        """Return every field of every interface of a view, as `Interface.field`."""
        shapes = [
            type_ for name, type_ in self.types.items() if isinstance(type_, Shape) and name != "Answers"
        ]
        return {f"{shape.name}.{name}" for shape in shapes for name in shape.fields}


class _Reader:
    def __init__(self, text: str):
        self.tokens = [found["token"] for found in _TOKEN.finditer(text) if found["token"]]
        self.at = 0

    def types(self) -> dict[str, Any]:
        """Return what the file declares, by name."""
        found: dict[str, Any] = {}
        while self.at < len(self.tokens):
            self._take("export")
            if self._next("interface"):
                name = self._take()
                extends = []
                if self._next("extends"):
                    extends.append(self._take())
                    while self._next(","):
                        extends.append(self._take())
                found[name] = Shape(name, tuple(extends), self._object())
            else:
                self._take("type")
                name = self._take()
                self._take("=")
                found[name] = self._type()
                self._take(";")
        return found

    def _type(self) -> Any:
        self._next("|")
        types = [self._listed()]
        while self._next("|"):
            types.append(self._listed())
        return types[0] if len(types) == 1 else Union(tuple(types))

    def _listed(self) -> Any:
        type_ = self._one()
        while self._next("["):
            self._take("]")
            type_ = Listed((type_,), fixed=False)
        return type_

    def _one(self) -> Any:
        token = self.tokens[self.at]
        if token == "{":
            return Shape("", (), self._object())
        self.at += 1
        if token.startswith("'"):
            return Literal(token[1:-1])
        if token == "(":
            type_ = self._type()
            self._take(")")
            return type_
        if token == "[":
            types = [self._type()]
            while self._next(","):
                types.append(self._type())
            self._take("]")
            return Listed(tuple(types), fixed=True)
        if token == "Record":
            for part in ("<", "string", ","):
                self._take(part)
            type_ = self._type()
            self._take(">")
            return Keyed(type_)
        if not token[0].isalpha():
            raise ValueError(f"{FILE.name}: {token!r} is not a type that the test can read")
        return Name(token)

    def _object(self) -> dict[str, Field]:
        self._take("{")
        fields: dict[str, Field] = {}
        while not self._next("}"):
            name = self._take()
            optional = self._next("?")
            self._take(":")
            fields[name] = Field(self._type(), optional)
            if not self._next(";"):
                self._take("}")
                break
        return fields

    def _next(self, token: str) -> bool:
        if self.at < len(self.tokens) and self.tokens[self.at] == token:
            self.at += 1
            return True
        return False

    def _take(self, wanted: str = "") -> str:
        token = self.tokens[self.at]
        if wanted and token != wanted:
            raise ValueError(f"{FILE.name}: {token!r} where {wanted!r} was expected")
        self.at += 1
        return token


@cache
def declared() -> Declared:
    """Return what the file declares, read once."""
    return Declared(FILE.read_text("utf-8"))


def answer_faults(op: str, value: Any, types: Declared | None = None) -> list[str]:
    """Return where an answer of the core is not what the screens are told that it is."""
    types = types or declared()
    answers = types.types["Answers"].fields
    return types.faults(answers[op].type, value, op) if op in answers else []
