"""Litestream, configured as the help says, streams the database while it is written, and gives it back."""

import re
import signal
import subprocess
import sys
import time
from contextlib import closing
from pathlib import Path

from server.keeping.verify.data_folder import FOLDER
from server.log import events
from server.storage import DataFolder
from tests.server.phone import NOW
from tests.server.phone import entry_after

HELP = Path(__file__).parents[3] / "static" / "help" / "en" / "data.md"
LITESTREAM = Path(sys.executable).with_name("litestream")
DEVICE = "d00000000000000aa"


def configuration(data, replica):
    text = re.search(r"```yaml\n(.*?)```", HELP.read_text("utf-8"), re.DOTALL)[1]
    assert text.count("data/swaptrail.db") == text.count("/mnt/elsewhere/swaptrail") == 1
    return text.replace("data/swaptrail.db", str(data)).replace("/mnt/elsewhere/swaptrail", str(replica))


def write(count, db, entries):
    for _ in range(count):
        new = [entry_after(entries, DEVICE, "cleaned", {"position": "x", "note": ""})]
        entries += new
        events.receive(db, new, None, NOW)
        time.sleep(0.02)


def test_what_was_streamed_is_restored_whole(tmp_path):
    folder, back = DataFolder(tmp_path / "data"), DataFolder(tmp_path / "back")
    folder.prepare()
    config = tmp_path / "litestream.yml"
    config.write_text(configuration(folder.database, tmp_path / "replica"))
    entries = []
    with closing(folder.open()) as db, (tmp_path / "log").open("wb") as log:
        write(5, db, entries)
        streaming = subprocess.Popen([LITESTREAM, "replicate", "-config", config], stdout=log, stderr=log)
        try:
            while not any(path.is_file() for path in (tmp_path / "replica").rglob("*")):
                assert streaming.poll() is None, (tmp_path / "log").read_text()
                write(1, db, entries)
            write(50, db, entries)
        finally:
            streaming.send_signal(signal.SIGTERM)  # it sends what is left before it ends
            try:
                assert streaming.wait(30) == 0, (tmp_path / "log").read_text()
            finally:
                streaming.kill()

    back.photos.mkdir(parents=True)
    subprocess.run(
        [LITESTREAM, "restore", "-config", config, "-o", back.database, folder.database],
        check=True,
        capture_output=True,
        timeout=60,
    )

    assert FOLDER.first_fault(back.root) is None
    with closing(back.open()) as db:
        found = [each["hash"] for each in events.after(db, 0, len(entries), 10**9)]
    assert found == [each["hash"] for each in entries]
