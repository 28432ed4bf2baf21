"""The list that a backup carries: each file with its hash, and where each device's chain ended."""

import json
import re
import zipfile
import zlib
from typing import NamedTuple

MANIFEST = "manifest.json"
DATABASE = "swaptrail.db"
_APP, _VERSION = "swaptrail backup", 1

# Nothing else is ever put into a backup, so nothing else is ever taken out of one.
_NAME = re.compile(r"swaptrail\.db|keys/[A-Za-z0-9_-][A-Za-z0-9._-]*|photos/[0-9a-f]{64}\.jpg")
_HASH = re.compile(r"[0-9a-f]{64}")
_LARGEST = 256 * 1024 * 1024


class NoManifest(Exception):
    """The archive has no manifest of this program."""


class ChangedManifest(NoManifest):
    """The archive is a backup of this program, but its manifest is not as it was written."""


class Manifest(NamedTuple):
    """What a backup says of itself: `files` is name -> hash, `heads` device -> {"seq", "hash"}."""

    made_at: int
    installation: str
    heads: dict[str, dict]
    files: dict[str, str]

    def text(self) -> str:
        """Returns the manifest as the file that goes into the backup."""
        return json.dumps({"app": _APP, "v": _VERSION, **self._asdict()}, indent=1, sort_keys=True)

    @classmethod
    def read(cls, archive: zipfile.ZipFile) -> "Manifest":
        """Returns the manifest of a backup; raises NoManifest for anything else."""
        try:
            if archive.getinfo(MANIFEST).file_size > _LARGEST:
                raise NoManifest
            value = json.loads(_content(archive))
            if (value["app"], value["v"]) != (_APP, _VERSION):
                raise NoManifest
        except (KeyError, TypeError, ValueError):
            raise NoManifest from None
        try:
            manifest = cls(*(value[name] for name in cls._fields))
            if not _is_sound(manifest):
                raise ChangedManifest
        except (KeyError, TypeError, ValueError, AttributeError):
            raise ChangedManifest from None
        return manifest


def photo_name(digest: str) -> str:
    """Returns under which name a photo lies in a backup."""
    return f"photos/{digest}.jpg"


def _content(archive: zipfile.ZipFile) -> bytes:
    """Returns the bytes of the manifest as they were written; by its checksum the archive knows others."""
    try:
        return archive.read(MANIFEST)
    except (zipfile.BadZipFile, zlib.error, NotImplementedError, OSError, EOFError):
        raise ChangedManifest if DATABASE in archive.namelist() else NoManifest from None


def _is_sound(manifest: Manifest) -> bool:
    files, heads = manifest.files, manifest.heads
    return (
        isinstance(manifest.made_at, int)
        and isinstance(manifest.installation, str)
        and isinstance(files, dict)
        and isinstance(heads, dict)
        and DATABASE in files
        and all(_NAME.fullmatch(name) and _HASH.fullmatch(files[name]) for name in files)
        and all(isinstance(head["seq"], int) and _HASH.fullmatch(head["hash"]) for head in heads.values())
    )
