"""The data folder: one SQLite file, the photos and the secret key, and how to open them.

What is acknowledged is durable, by this discipline:

* A batch of events is one transaction, with its indexes and the state that follows from it. SQLite
  runs in WAL mode with `synchronous = FULL`: a commit returns after the log file was synced to the
  disk, and the answer to the phone goes out after the commit. A process that is killed, or a power
  cut, leaves either the whole batch or nothing of it.
* A photo is written under another name, synced, renamed, and its folders synced; then its row is
  committed, and then it is acknowledged. Under its own name it is whole or absent; what lies there
  without a row is harmless and swept in time.
* Nothing is deleted before a commit that makes it superfluous, and no event ever is.
* What the disk refuses reaches the phone as an error (`trouble`), never as an acknowledgement; the
  phone keeps its own copy until it has one.

`tests/server/storage/test_killed_server.py` and `test_bad_disk.py` hold the server to it.
"""

from .connection import ask_when_writing
from .connection import at_one_moment
from .connection import open_database
from .connection import writing
from .connection import writing_cache
from .folder import DataFolder
from .folder import folder_with_data
from .migrations import migrations

__all__ = [
    "DataFolder",
    "ask_when_writing",
    "at_one_moment",
    "folder_with_data",
    "migrations",
    "open_database",
    "writing",
    "writing_cache",
]
