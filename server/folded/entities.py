"""Entities of one kind as a dict that reads each from its row when it is first asked for."""

import json
from collections.abc import Callable
from collections.abc import Iterator
from typing import Any

from server.folded.rows import GONE
from server.folded.rows import Rows


class Entities(dict):
    """The entities that were read or made; going through it goes through these alone."""

    def __init__(self, rows: Rows, kind: str, on_read: Callable[[str], None] | None = None):
        """Starts with nothing read; `on_read` hears of each name that is."""
        super().__init__()
        self.kind = kind
        self._rows = rows
        self._on_read = on_read
        self._kept: dict[str, str] = {}
        self._absent: set[str | None] = {None}
        self._removed: set[str] = set()

    def __missing__(self, name: str | None) -> Any:
        """Reads an entity from its row."""
        if name is None or name in self._absent:
            raise KeyError(name)
        body = self._rows.read(self.kind, name)
        self._kept[name] = body or GONE
        if body is None:
            self._absent.add(name)
            raise KeyError(name)
        self[name] = json.loads(body)
        if self._on_read:
            self._on_read(name)
        return self[name]

    def get(self, name: Any, default: Any = None) -> Any:
        """Returns an entity, or `default` where there is none."""
        try:
            return self[name]
        except KeyError:
            return default

    def __contains__(self, name: object) -> bool:
        """Tells whether there is an entity of this name, read or not."""
        return self.get(name) is not None

    def __delitem__(self, name: str) -> None:
        """Takes an entity away."""
        super().__delitem__(name)
        self._absent.add(name)
        self._removed.add(name)

    def changes(self) -> Iterator[tuple[str, str | None, str]]:
        """Yields (name, text before, text now) of what differs from its row, in order of name."""
        for name in sorted({*self, *self._removed}):
            old = self._kept.get(name, GONE)
            new = to_text(super().__getitem__(name)) if super().__contains__(name) else GONE
            if new != old:
                yield name, None if old == GONE else old, new


def to_text(entity: object) -> str:
    """Returns an entity as its row has it: the same text for the same value."""
    return json.dumps(entity, ensure_ascii=False, separators=(",", ":"), sort_keys=True)
