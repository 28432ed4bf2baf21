"""What the machine's storage may refuse, told apart: full, not writable, busy, broken."""

import errno
import sqlite3

_FULL = {errno.ENOSPC, errno.EDQUOT, errno.EFBIG}
_SHUT = {errno.EROFS, errno.EACCES, errno.EPERM}
_IO_FULL = {sqlite3.SQLITE_FULL}
_IO_SHUT = {sqlite3.SQLITE_READONLY, sqlite3.SQLITE_CANTOPEN, sqlite3.SQLITE_PERM, sqlite3.SQLITE_AUTH}
_IO_BUSY = {sqlite3.SQLITE_BUSY, sqlite3.SQLITE_LOCKED}


def trouble(error: OSError | sqlite3.Error) -> str | None:
    """Returns "full", "shut", "busy" or "broken"; None where the storage is not to blame."""
    if isinstance(error, OSError):
        if error.errno in _FULL:
            return "full"
        if error.errno in _SHUT:
            return "shut"
        return "broken" if error.errno == errno.EIO else None
    code = getattr(error, "sqlite_errorcode", sqlite3.SQLITE_ERROR) & 0xFF
    if code in _IO_FULL:
        return "full"
    if code in _IO_SHUT:
        return "shut"
    if code in _IO_BUSY:
        return "busy"
    # Also what a file size limit gives: SQLite tells only one reason, a full disk, from the others.
    return "broken" if code in {sqlite3.SQLITE_IOERR, sqlite3.SQLITE_CORRUPT, sqlite3.SQLITE_NOTADB} else None


def storage_words(error: OSError | sqlite3.Error) -> str:
    """Returns one line about what stands against a command."""
    place = f"{error.filename}: " if isinstance(error, OSError) and error.filename else ""
    sentence = {
        "full": "The disk is full. Free some space, then try again.",
        "shut": "This cannot be written or opened. Look at its permissions, and whether the disk is mounted "
        "for reading alone.",
        "busy": "Another program holds the database. Try again in a moment.",
        "broken": f"The disk or the database does not answer as it should ({error}). Look at the disk, then "
        "run `swaptrail verify` on the data folder.",
    }.get(trouble(error) or "", f"{error}.")
    return place + sentence
