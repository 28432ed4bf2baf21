"""The demo data set: eight jobs of our own on six vehicles, run through the real core."""

from demo_db.build import FolderInUse
from demo_db.build import build

__all__ = ["FolderInUse", "build"]
