"""The core's State over rows: an entity is read when the core first asks for it.

The core looks entities up by id, and where it goes through all units or conflicts it keeps those of
one job, of one vehicle, or the spares in stock. `focus` reads these beforehand, so going through
what is read finds the same as going through everything. `tests/server/test_folded.py` holds every
answer against a fold of the whole log.
"""

import json
from collections.abc import Iterator
from typing import Any

from sqlite_utils import Database

from server.core.fold import apply
from server.core.state import State
from server.folded.rows import Rows
from server.folded.rows import jobs_shown_by


class _Entities(dict):
    """Entities of one kind by id, read from their rows by need."""

    def __init__(self, rows: Rows, kind: str):
        super().__init__()
        self.kind = kind
        self.kept: dict[str, str] = {}
        self._rows = rows
        self._absent: set[str | None] = {None}

    def __missing__(self, name: str | None) -> Any:
        body = None if name in self._absent else self._rows.read(self.kind, name or "")
        if body is None or name is None:
            self._absent.add(name)
            raise KeyError(name)
        self.kept[name] = body
        self[name] = json.loads(body)
        return self[name]

    def get(self, name: Any, default: Any = None) -> Any:
        try:
            return self[name]
        except KeyError:
            return default

    def __contains__(self, name: object) -> bool:
        return self.get(name) is not None


class _Conflicts:
    """The list of conflicts, kept by the unit, else the job, that each is about."""

    def __init__(self, rows: Rows):
        self.lists = _Entities(rows, "conflicts")
        self.n = 0  # the event that is being folded

    def __iter__(self) -> Iterator[dict]:
        every = [entry for owner in sorted(dict.keys(self.lists)) for entry in self.lists[owner]]
        return iter([conflict for _, conflict in sorted(every, key=lambda entry: entry[0])])

    def __len__(self) -> int:
        return sum(1 for _ in self)

    def append(self, conflict: dict) -> None:
        owner = conflict["unit"] or conflict["job"] or ""
        self.lists.setdefault(owner, self.lists.get(owner, []))
        place = [self.n, len(self.lists[owner])]
        self.lists[owner].append([place, conflict])


class FoldedState(State):
    """The state as the rows have it, and what is folded into it on top."""

    vehicles: Any
    units: Any
    codes: Any
    jobs: Any
    conflicts: Any

    def __init__(self, db: Database):
        """Starts with nothing read."""
        super().__init__()
        self._rows = rows = Rows(db)
        self._focused: set[str] = set()
        self.vehicles = _Entities(rows, "vehicle")
        self.units = _Entities(rows, "unit")
        self.codes = _Entities(rows, "code")
        self.jobs = _Entities(rows, "job")
        self.conflicts = _Conflicts(rows)
        self._histories = _Entities(rows, "history")

    def fold(self, n: int, event: dict, withdrawn: dict | None) -> None:
        """Folds event `n` as the core does."""
        self._look_at(event)
        self.conflicts.n = n
        apply(self, event, withdrawn)
        self._look_at(event)
        self.not_understood.clear()  # a job's history has them
        job = self.jobs.get(event["job"])
        if job and job["history"]:
            self._note(n, job)

    def focus(self, job: str) -> None:
        """Reads what the core goes through when it is asked about a job."""
        found = self.jobs.get(job)
        if found is None or job in self._focused:
            return
        self._focused.add(job)
        wanted = [f"job:{job}", f"claims:{found['vehicle']}"]
        for name in {unit for link in wanted for unit in self._rows.linked(link)}:
            self.units.get(name)
        for owner in [job, *self._rows.linked(f"conflicts:{job}")]:
            self.conflicts.lists.get(owner)

    def add_stock(self) -> None:
        """Reads the spares in stock, which a job's next move may use."""
        for name in self._rows.linked("stock"):
            self.units.get(name)

    def add_history(self, job: str) -> None:
        """Puts a job's history back from the log; its row goes without."""
        found, about = self.jobs.get(job), self._histories.get(job)
        if found is None or about is None:
            return
        events = self._rows.conn.execute(
            "SELECT n, body, withdrawn.actor, withdrawn.reason FROM events "
            "LEFT JOIN withdrawn USING (device, seq) WHERE job = ? AND n >= ? AND n <= ? ORDER BY n",
            [job, about["since"], self._rows.mark().upto],
        )
        for n, body, actor, reason in events:
            event = json.loads(body)
            entry = {name: event[name] for name in ("device", "seq", "at", "actor", "kind", "data")}
            entry["withdrawn"] = None if reason is None else {"actor": actor, "reason": reason}
            entry["understood"] = n not in about["odd"]
            found["history"].append(entry)

    def save(self, bucket: int, fine_from: int) -> None:
        """Writes what has changed."""
        shown: set[str] = set()
        for kept in (
            self.vehicles, self.units, self.codes, self.jobs, self._histories, self.conflicts.lists,
        ):  # fmt: skip
            for name in sorted(dict.keys(kept)):
                old, new = kept.kept.get(name), to_text(kept[name])
                if new != old:
                    self._rows.write(kept.kind, name, old, new, bucket, fine_from)
                    shown |= jobs_shown_by(kept.kind, name, old, new)
        for name in shown & set(dict.keys(self.jobs)):
            self._rows.list_job(name, self.jobs[name])
        self._rows.stale(shown)

    def _look_at(self, event: dict) -> None:
        """Reads what the core goes through when it folds an event."""
        if event["job"] is not None:
            self.focus(event["job"])
        unit = event["data"].get("unit")
        if isinstance(unit, str):
            self.conflicts.lists.get(unit)

    def _note(self, n: int, job: dict) -> None:
        """Takes the new entry of a job's history off; the log has it."""
        entry = job["history"].pop()
        about = self._histories.get(job["id"])
        if about is None:
            about = self._histories[job["id"]] = {"since": n, "odd": []}
        if not entry["understood"]:
            about["odd"].append(n)


def to_text(entity: object) -> str:
    """Returns an entity as its row has it: the same text for the same value."""
    return json.dumps(entity, ensure_ascii=False, separators=(",", ":"), sort_keys=True)
