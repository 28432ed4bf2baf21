"""`swaptrail restore FILE.zip`: a backup as a new data folder, or nothing at all.

A new epoch begins in it. A phone that meets it knows that what it had sent may be gone with the old folder,
and sends everything that it has again; repeats are harmless.
"""

import os
import sqlite3
import zipfile
from contextlib import closing
from pathlib import Path

from server.core.messages import message
from server.keeping.manifest import DATABASE
from server.keeping.manifest import Manifest
from server.keeping.verify import examine
from server.keeping.verify.backup_zip import BACKUP
from server.keeping.verify.backup_zip import hash_of
from server.log import epoch
from server.photos.store import path_of
from server.refusals import CommandRefused
from server.storage import DataFolder
from server.storage.durable import sync_file
from server.storage.durable import sync_folder
from server.storage.parts import beside
from server.storage.parts import making_folder
from server.storage.parts import name_for
from server.storage.parts import take_away_left
from server.storage.private import make_private_file
from server.storage.private import make_private_folder
from server.words.spoken import say


def run(data: Path, file: Path) -> None:
    """Makes `data` from a backup; refuses one that is altered, and a folder that holds anything."""
    if data.exists() and (not data.is_dir() or any(data.iterdir())):
        raise CommandRefused(message("keeping-not-empty", folder=str(data)))
    examined = examine(file, wanted=(BACKUP,))
    if examined.sort is not BACKUP:
        raise CommandRefused(message("keeping-no-backup", file=str(file), sort=examined.sort.name))
    if examined.fault:
        raise CommandRefused(message("keeping-backup-altered", file=str(file), place=examined.fault.told()))
    data.parent.mkdir(parents=True, exist_ok=True)
    take_away_left(beside(data.parent))
    with making_folder(name_for(data)) as part:
        entries = _unpack(file, DataFolder(part))
        os.replace(part, data)
    sync_folder(data.parent)
    print(say("keeping-restored", folder=str(data), entries=entries))


def _unpack(file: Path, folder: DataFolder) -> int:
    for made in (folder.photos, folder.keys):
        made.mkdir(mode=0o700)
    with zipfile.ZipFile(file) as archive:
        manifest = Manifest.read(archive)
        for name, digest in manifest.files.items():
            target = _place(folder, name)
            make_private_folder(target.parent)
            make_private_file(target)
            if hash_of(archive, name, target) != digest:
                raise CommandRefused(message("keeping-changed-meanwhile", name=name, file=str(file)))
            sync_file(target)
    with closing(sqlite3.connect(folder.database)) as connection:
        connection.execute("PRAGMA synchronous = FULL")
        epoch.begin(connection)
        connection.commit()
    return sum(head["seq"] for head in manifest.heads.values())


def _place(folder: DataFolder, name: str) -> Path:
    if name == DATABASE:
        return folder.database
    kind, _, file = name.partition("/")
    return folder.keys / file if kind == "keys" else path_of(folder.photos, file.partition(".")[0])
