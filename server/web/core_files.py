"""The core as a phone gets it: its Python files, and their digest, by which conclusions are told apart."""

import functools
import hashlib
import json
from pathlib import Path


@functools.cache
def core_bundle() -> bytes:
    """Returns the core's Python files as the JSON that the phone writes into its interpreter.

    Read once in a process: it is the core that this process concludes by.
    """
    return json.dumps(
        {"digest": core_digest(), "files": core_files()}, ensure_ascii=False, sort_keys=True
    ).encode()


@functools.cache
def core_digest() -> str:
    """Returns the SHA-256, in hex, of the core's files; compiling them for a phone does not change it."""
    files = json.dumps({"files": core_files()}, ensure_ascii=False, sort_keys=True)
    return hashlib.sha256(files.encode()).hexdigest()


def core_files() -> dict[str, str]:
    """Returns the core's Python files by the name under which the phone keeps them."""
    package = Path(__file__).resolve().parents[1]
    files = {"server/__init__.py": (package / "__init__.py").read_text("utf-8")}
    for file in (package / "core").rglob("*.py"):
        files[f"server/{file.relative_to(package).as_posix()}"] = file.read_text("utf-8")
    return files
