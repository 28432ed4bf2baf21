"""`swaptrail rebuild`: makes everything that follows from the log anew, and says what differed.

All in one transaction: a server that runs meanwhile waits or answers from before, and a power cut
leaves what was there.
"""

import json
from contextlib import closing
from pathlib import Path

from sqlite_utils import Database

from server import folded
from server.clock import now_ms
from server.core.messages import message
from server.keeping.verify import Fault
from server.keeping.verify import photo_check
from server.keeping.verify import tell_lost
from server.log import named
from server.photos import lost
from server.photos.sweep import KEPT_DAYS
from server.photos.sweep import sweep
from server.photos.sweep import sweep_files
from server.storage import folder_with_data
from server.storage import writing
from server.words.spoken import say

_MOST_LINES = 20
_ALL = 1 << 40

_NEWEST = """(SELECT kind, id, body FROM folded WHERE body <> 'null' AND bucket = (
    SELECT max(bucket) FROM folded AS other WHERE other.kind = folded.kind AND other.id = folded.id))"""

# What is compared: what a row is called, then two columns that tell a row and what it says, and where from.
_COMPARED = {
    "state": ("keeping-row-state", "kind, id, body", _NEWEST),
    "links": ("keeping-row-link", "link, id, ''", "folded_links"),
    "withdrawn": ("keeping-row-correction", "device, seq, actor || ' ' || reason", "withdrawn"),
    "righted": ("keeping-row-correction", "device, seq, said", "righted"),
    "list": ("keeping-row-job", "job, '', closed || ' ' || opened_at", "job_list"),
    "words": ("keeping-row-words", "kind, id, text", "search"),
    "units": ("keeping-row-unit", "unit, n, ''", "event_units"),
    "photos": ("keeping-row-photo", "sha256, n, ''", "event_photos"),
    "wanted": ("keeping-row-wanted", "sha256, n, device", "photos_wanted"),
}


def run(data: Path) -> int:
    """Makes the caches of `data` anew; returns 1 where something differed."""
    folder = folder_with_data(data)
    folder.prepare()
    with closing(folder.open()) as db:
        folded.catch_up(db)
        differences = rebuild(db)
        photos = _looked_at_all(db, folder.photos)
        swept = len(sweep(db, folder.photos, now_ms())) + sweep_files(db, folder.photos, now_ms())
        entries = db.conn.execute("SELECT count(*) FROM events").fetchone()[0]
    if swept:
        print(say("keeping-swept", photos=swept, days=KEPT_DAYS))
    if differences:
        print(say("keeping-rebuilt-other", entries=entries, count=len(differences)))
        print("\n".join(differences[:_MOST_LINES]))
    else:
        print(say("keeping-rebuilt-but" if photos else "keeping-rebuilt", entries=entries))
    tell_lost(photos)
    return 1 if differences or photos else 0


def _looked_at_all(db: Database, folder: Path) -> list[Fault]:
    """Looks at every photo on record, as the server does over days; returns what is lost."""
    lost.adopt(db, folder, now_ms())
    for (digest,) in db.conn.execute("SELECT sha256 FROM photos ORDER BY sha256").fetchall():
        lost.look(db, folder, digest, now_ms())
    return photo_check.known(db.conn)


def rebuild(db: Database) -> list[str]:
    """Drops the caches, makes them from the log, and returns what differed."""
    with writing(db):
        for name, (_, columns, source) in _COMPARED.items():
            db.conn.execute(f"CREATE TEMP TABLE old_{name} AS SELECT {columns} FROM {source}")
        folded.forget(db)
        folded.advance(db, _ALL)
        _index_again(db)
        differences = [line for name in _COMPARED for line in _differences(db, name)]
        for name in _COMPARED:
            db.conn.execute(f"DROP TABLE old_{name}")
    return differences


def _differences(db: Database, name: str) -> list[str]:
    words, columns, source = _COMPARED[name]
    before, now = f"SELECT * FROM old_{name}", f"SELECT {columns} FROM {source}"
    gone = {row[:2] for row in db.conn.execute(f"{before} EXCEPT {now}")}
    new = {row[:2] for row in db.conn.execute(f"{now} EXCEPT {before}")}
    lines = []
    for key in sorted(gone | new):
        what = "other" if key in gone & new else "extra" if key in gone else "missing"
        row = message(words, first=str(key[0]), second=str(key[1]))
        lines.append(say("keeping-row", row=row, what=what))
    return lines


def _index_again(db: Database) -> None:
    """Notes anew which entry names which unit and photo."""
    db.conn.execute("DELETE FROM event_units")
    db.conn.execute("DELETE FROM event_photos")
    for n, body in db.conn.execute("SELECT n, body FROM events ORDER BY n"):
        event = json.loads(body)
        units = [(unit, n) for unit in named.units(event, body)]
        db.conn.executemany("INSERT INTO event_units (unit, n) VALUES (?, ?)", units)
        photo = named.photo(event)
        if photo is not None:
            db.conn.execute("INSERT INTO event_photos (sha256, n) VALUES (?, ?)", [photo, n])
    db.conn.execute("DELETE FROM photos_wanted")
    db.conn.execute(
        "INSERT INTO photos_wanted SELECT device, n, sha256 FROM event_photos JOIN events USING (n) "
        "WHERE sha256 NOT IN (SELECT sha256 FROM photos)"
    )
