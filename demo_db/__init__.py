"""The demo data set: three vehicles and five jobs of our own, run through the real core."""

from demo_db.build import FolderInUse
from demo_db.build import build

__all__ = ["FolderInUse", "build"]
