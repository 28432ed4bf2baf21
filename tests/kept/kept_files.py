"""The files that commit 2a35a3b made, unpacked."""

import io
import json
import lzma
import re
import tarfile
from functools import cache
from pathlib import Path

MADE = Path(__file__).parent / "made_by_2a35a3b"

# Sentences that were changed on purpose since, as they were and as they are: what the answers say is read so.
REWORDED = (
    # Whoever takes a file in is told what nothing proves.
    (
        r"(taken in, 0 entries were here already\.)\\n",
        r"\1\\nIt is of 1 phone without a key: nothing proves who recorded it. You answer for it.\\n",
    ),
    # It may hold what was sent, too: of a phone without a server, everything.
    ("a file of unsent entries", "a file that a phone made"),
    # One idea a sentence, and which figure is of what.
    (
        r"Nothing (?:is )?left to fix: ([^\";:]*?) sure, ([^\";:]*?) wanted\.",
        r"That nothing is left to fix is \1 sure; \2 is wanted.",
    ),
    (r"Nothing is left to fix: ([^\";:]*?) sure\.", r"That nothing is left to fix is \1 sure."),
    (
        "good; the fault is in the connector, the wire or the control unit's input of that position",
        "good. The fault is in that position's connector, wire or control-unit input",
    ),
    # What belongs to a position beside its sensor, a sort of part says once.
    (
        "the connector, the wire or the control-unit channel of",
        "the connector, wire or control-unit input of",
    ),
    ("is bad: connector, wire or channel", "is bad: connector, wire or control-unit input"),
    # The numbers are read where they are asked for; the step says what matters.
    (
        "Read the part number off the old sensor and off the new one. They have to match. "
        "Stick a label on the new one.",
        "Part numbers must match.",
    ),
    # One test need not tell; what each result would mean is said with the move.
    (
        r"Without one, put a fresh label on each, fit [^\";]*?, whichever it was before\.",
        "Without one, put a fresh label on each. Tests then tell which one is bad.",
    ),
    # What else it could be is told to a customer from one in a hundred on.
    (r" What else it could be: [^\";]*?, (?:under 0\.1|0\.\d)\s%\.", ""),
    # It may have been one test.
    ("clean tests have proved it", "testing has proved it"),
    # The screen of a test that still shows the fault is none of a work that is done.
    (
        r'"after": \[(\{"at": 1774014014137, [^}]*\})\], ("before": \[[^\]]*\]), "during": \[',
        r'"after": [], \2, "during": [\1, ',
    ),
)


@cache
def content(name: str) -> bytes:
    """Return the bytes of one file."""
    return lzma.decompress((MADE / f"{name}.xz").read_bytes())


@cache
def answers() -> dict:
    """Return what the commit answered."""
    text = content("answers.json").decode()
    for was, now in REWORDED:
        text, found = re.subn(was, now, text)
        assert found, f"no answer says {was!r}"
    return json.loads(text)


@cache
def entries() -> list[dict]:
    """Return the whole log, {"event", "hash"} each; the last ones are that phone's."""
    return [json.loads(line) for line in content("log.jsonl").splitlines()]


def unsent() -> int:
    """Return how many entries the phone without a network had not sent."""
    return json.loads(content("unsent.txt").split(b"\n", 1)[0])["entries"]


def folder(root: Path) -> Path:
    """Unpack the data folder into a new folder and return it."""
    with tarfile.open(fileobj=io.BytesIO(content("folder.tar"))) as archive:
        archive.extractall(root, filter="data")
    return root


def file(root: Path, name: str, changed: int | None = None) -> Path:
    """Write one file out, with the byte at `changed` another one."""
    whole = bytearray(content(name))
    if changed is not None:
        whole[changed] ^= 1
    path = root / name
    path.write_bytes(whole)
    return path
