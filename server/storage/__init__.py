"""The data folder: one SQLite file, the photos and the secret key, and how to open them."""

from .connection import open_database
from .connection import reading
from .connection import writing
from .folder import DataFolder
from .migrations import migrations

__all__ = ["DataFolder", "migrations", "open_database", "reading", "writing"]
