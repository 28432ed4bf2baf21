"""`swaptrail rejoin`: says of a data folder that it came back from elsewhere, so that phones start over.

A copy that somebody put back may lack what was recorded after it was made, and nothing in it tells. Pictures
may be missing as well, so all are looked at soon.
"""

from contextlib import closing
from pathlib import Path

from server.log import epoch
from server.log import events
from server.log import mark
from server.photos import rounds
from server.storage import folder_with_data
from server.storage import writing
from server.words.spoken import say


def run(data: Path) -> None:
    """Begins a new epoch in `data`; harmless at any time, also while it is served."""
    folder = folder_with_data(data)
    folder.prepare()
    with closing(folder.open()) as db:
        with writing(db):
            epoch.begin(db.conn)
            rounds.all_anew(db.conn)
        mark.write(db, folder)
        entries = events.last_n(db)
    print(say("keeping-rejoined", folder=str(data), entries=entries))
