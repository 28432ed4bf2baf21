"""Folds buckets of entries beside the tables, so that nobody who writes has to wait meanwhile.

What comes out is written afterwards in one go, if the state has not moved on since. Forward means on from
where the state is. Again means a bucket that was folded before, because a correction names an entry of it:
it is folded from what was there before it. Whatever comes out as it was, is as if nothing had happened; who
asked for what came out different, is folded again too. So an old correction costs the buckets that had to
do with what it changes, however long the log is.
"""

from sqlite_utils import Database

from server.folded import corrections
from server.folded.rows import BUCKET
from server.folded.rows import GONE
from server.folded.rows import Change
from server.folded.rows import Rows
from server.folded.rows import asked_by
from server.folded.rows import leads
from server.folded.state import FoldedState


def bucket_of(n: int) -> int:
    """Returns the bucket of an entry; bucket `b` ends with entry `b * BUCKET`."""
    return -(-n // BUCKET)


class Ahead:
    """What folding came to, until it is written."""

    def __init__(self, db: Database):
        """Starts from the state as the tables have it."""
        self.db = db
        self.different: dict[tuple[str, str], Change] = {}  # by kind and id: the text in the tables, and now
        self.links: dict[str, set[str]] = {}
        self._versions: dict[tuple[str, str, int], str | None] = {}
        self._asked: set[tuple[str, int]] = set()
        self._next: dict[str, int] = {}

    def forward(self, after: int, upto: int) -> None:
        """Folds the entries behind entry `after`."""
        while after < upto:
            bucket = bucket_of(after + 1)
            stop = min(upto, bucket * BUCKET)
            for change in self._fold(bucket, bucket, after, stop):
                self._keep(change, bucket)
                known = self.different.get(change[:2])
                self.different[change[:2]] = known._replace(new=change.new) if known else change
            after = stop

    def again(self, entries: list[int], upto: int, most: int) -> bool:
        """Folds again what follows from other outcomes of these entries; False if it is more than `most`.

        The state is that after entry `upto`, and stays so.
        """
        wanted = sorted({bucket_of(n) for n in entries})
        bucket = self._bucket_after(0, wanted)
        while bucket:
            most -= BUCKET
            if most < 0:
                return False
            self._fold_again(bucket, upto)
            bucket = self._bucket_after(bucket, wanted)
        return True

    def write(self) -> None:
        """Writes it; called inside a transaction."""
        rows = Rows(self.db)
        rows.write(self._versions, self._asked, list(self.different.values()))
        rows.keep_leads({(link, name) for link, names in self.links.items() for name in names})

    def _fold(self, bucket: int, start: int, after: int, upto: int) -> list[Change]:
        rows = _RowsAt(self.db, start, self)
        state = FoldedState(self.db, rows)
        for entry in corrections.entries(self.db.conn, "n > ? AND n <= ?", [after, upto]):
            state.fold(*entry)
        changes = list(state.changes())
        self._asked |= {(name, bucket) for name in rows.asked}
        return changes

    def _fold_again(self, bucket: int, upto: int) -> None:
        after = (bucket - 1) * BUCKET
        was = {
            (kind, name): body
            for kind, name, body in self.db.conn.execute(
                "SELECT kind, id, body FROM folded WHERE bucket = ?", [bucket]
            )
        }
        changes = self._fold(bucket, bucket - 1, after, min(upto, after + BUCKET))
        came = {change[:2]: change for change in changes}
        for key in was.keys() | came.keys():
            kind, name = key
            at_start = Rows(self.db).read_at(bucket - 1, kind, name)
            old = was.get(key, self.different[key].old if key in self.different else at_start)
            new = self.different[key].new if key in self.different else at_start or GONE
            if key in came:
                new = came[key].new
                self._keep(came[key], bucket)
            else:
                self._versions[kind, name, bucket] = None
            self.different.pop(key, None)
            if new != (old or GONE):
                self.different[key] = Change(kind, name, None if old == GONE else old, new)

    def _keep(self, change: Change, bucket: int) -> None:
        self._versions[change.kind, change.name, bucket] = change.new
        for link, name in leads(change.kind, change.name, change.new):
            self.links.setdefault(link, set()).add(name)

    def _bucket_after(self, bucket: int, wanted: list[int]) -> int | None:
        """Returns the next bucket to fold again, None after the last.

        It is wanted, or it asked for what is different.
        """
        coming = [each for each in wanted if each > bucket]
        for change in self.different.values():
            for name in asked_by(change):
                if self._next.get(name, 0) <= bucket:
                    query = "SELECT min(bucket) FROM folded_asked WHERE name = ? AND bucket > ?"
                    (after,) = self.db.conn.execute(query, [name, bucket]).fetchone()
                    self._next[name] = after or 1 << 62
                coming.append(self._next[name])
        first = min(coming, default=1 << 62)
        return first if first < 1 << 62 else None


class _RowsAt(Rows):
    """The state as it was at the end of a bucket, with what was folded ahead since."""

    def __init__(self, db: Database, bucket: int, ahead: Ahead):
        super().__init__(db)
        self._bucket = bucket
        self._ahead = ahead

    def _text(self, kind: str, name: str) -> str | None:
        known = self._ahead.different.get((kind, name))
        if known is None:
            return self.read_at(self._bucket, kind, name)
        return None if known.new == GONE else known.new

    def linked(self, link: str) -> list[str]:
        """Returns the entities under a link, also those that were once or will be."""
        return sorted({*super().linked(link), *self._ahead.links.get(link, ())})
