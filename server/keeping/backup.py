"""`swaptrail backup FILE.zip`: the whole data folder in one file, while the server goes on writing.

SQLite's backup gives the database as it stood at one moment; photos never change once stored, so
they are copied afterwards, each held against its hash. Files lie in the archive uncompressed: one
damaged byte then costs one entry or photo, which `verify` can name, and not all that follows.
"""

import hashlib
import sqlite3
import zipfile
from contextlib import closing
from pathlib import Path

from sqlite_utils import Database

from server.clock import now_ms
from server.keeping.manifest import DATABASE
from server.keeping.manifest import MANIFEST
from server.keeping.manifest import Manifest
from server.keeping.manifest import photo_name
from server.keeping.new_file import refuse_unless_new
from server.keeping.new_file import written_whole
from server.keeping.verify.data_folder import open_only
from server.photos import lost
from server.photos.store import path_of
from server.storage import DataFolder
from server.storage import folder_with_data
from server.storage import migrations
from server.storage.parts import scratch_folder
from server.words.spoken import say

_BLOCK = 1 << 20


def run(data: Path, out: Path) -> int:
    """Writes a backup of `data`; returns 1 where a photo could not go into it."""
    folder = folder_with_data(data)
    refuse_unless_new(out)
    with written_whole(out) as part:
        left_out, manifest = _write(folder, part)
    entries = sum(head["seq"] for head in manifest.heads.values())
    photos = sum(name.startswith("photos/") for name in manifest.files)
    print(say("keeping-backup-made", file=str(out), entries=entries, photos=photos))
    for digest in left_out:
        print(say("keeping-backup-without", photo=digest, folder=str(data)))
    return 1 if left_out else 0


def _write(folder: DataFolder, part: Path) -> tuple[list[str], Manifest]:
    with (
        zipfile.ZipFile(part, "w", zipfile.ZIP_STORED, allowZip64=True) as archive,
        scratch_folder(part.parent) as scratch,
    ):
        copy = scratch / DATABASE
        _copy_database(folder, copy)
        files: dict[str, str] = {}
        with closing(open_only(copy)) as connection:
            left_out = _add_photos(archive, folder, connection, files)
            manifest = Manifest(now_ms(), _installation(connection), _heads(connection), files)
        if left_out:
            _note_lost(copy, left_out)
        files[DATABASE] = _add(archive, DATABASE, copy)
        for key in sorted(folder.keys.glob("*")):
            if key.suffix != ".part":
                files[f"keys/{key.name}"] = _add(archive, f"keys/{key.name}", key)
        archive.writestr(MANIFEST, manifest.text())
    return left_out, manifest


def _copy_database(folder: DataFolder, target: Path) -> None:
    """Copies the database as it stands at one moment, into a file that needs no other beside it."""
    with closing(folder.open()) as db, closing(sqlite3.connect(target)) as copy:
        db.conn.backup(copy)
        copy.execute("PRAGMA journal_mode = DELETE")


def _note_lost(copy: Path, digests: list[str]) -> None:
    """Notes in the copy what could not go with it: without that, it would name photos that it lacks."""
    with closing(sqlite3.connect(copy)) as connection:
        migrations.apply(Database(connection, execute_plugins=False))
        for digest in digests:
            lost.note(connection, digest, lost.MISSING, now_ms())
        connection.commit()


def _add_photos(
    archive: zipfile.ZipFile, folder: DataFolder, connection: sqlite3.Connection, files: dict[str, str]
) -> list[str]:
    """Adds every photo on record; returns those that are not what they should be and are left out."""
    left_out = []
    for (digest,) in connection.execute("SELECT sha256 FROM photos ORDER BY sha256"):
        try:
            data = path_of(folder.photos, digest).read_bytes()
        except OSError:
            data = b""
        if hashlib.sha256(data).hexdigest() == digest:
            archive.writestr(photo_name(digest), data)
            files[photo_name(digest)] = digest
        else:
            left_out.append(digest)
    return left_out


def _add(archive: zipfile.ZipFile, name: str, path: Path) -> str:
    digest = hashlib.sha256()
    with path.open("rb") as file, archive.open(name, "w", force_zip64=True) as out:
        while block := file.read(_BLOCK):
            digest.update(block)
            out.write(block)
    return digest.hexdigest()


def _heads(connection: sqlite3.Connection) -> dict[str, dict]:
    rows = connection.execute("SELECT device, max(seq), hash FROM events GROUP BY device")
    return {device: {"seq": seq, "hash": digest} for device, seq, digest in rows}


def _installation(connection: sqlite3.Connection) -> str:
    row = connection.execute("SELECT value FROM settings WHERE name = 'installation'").fetchone()
    return row[0] if row else ""
