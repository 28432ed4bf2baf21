"""The steps that make and change the tables; each runs once, in one transaction with its record.

One list in the order in which they came, and so one module, however long.
Never edit a step that was released: add another.
"""

from sqlite_utils import Database
from sqlite_utils import Migrations

migrations = Migrations("swaptrail")


@migrations()
def make_settings(db: Database) -> None:
    """Facts about this data folder that never change: its address, its identity."""
    db.conn.execute("CREATE TABLE settings (name TEXT PRIMARY KEY, value TEXT NOT NULL) STRICT")


@migrations()
def make_sessions(db: Database) -> None:
    """Who may talk to the server. Tokens are kept as hashes: a stolen file opens nothing."""
    db.conn.execute(
        """CREATE TABLE sessions (
            id INTEGER PRIMARY KEY,
            token_hash TEXT NOT NULL UNIQUE,
            name TEXT NOT NULL,
            created_at INTEGER NOT NULL,
            revoked_at INTEGER
        ) STRICT"""
    )
    db.conn.execute(
        """CREATE TABLE pairings (
            token_hash TEXT PRIMARY KEY,
            made_by INTEGER REFERENCES sessions(id),
            made_at INTEGER NOT NULL,
            expires_at INTEGER NOT NULL,
            uses_left INTEGER NOT NULL CHECK (uses_left >= 0)
        ) STRICT"""
    )
    db.conn.execute(
        """CREATE TABLE devices (
            device TEXT PRIMARY KEY,
            session INTEGER REFERENCES sessions(id),
            first_seen INTEGER NOT NULL,
            last_seen INTEGER NOT NULL,
            app TEXT NOT NULL DEFAULT ''
        ) STRICT"""
    )
    db.conn.execute("CREATE INDEX devices_by_session ON devices (session)")


@migrations()
def make_events(db: Database) -> None:
    """The log. `n` is the order of receipt; AUTOINCREMENT because a cursor must never be reused."""
    db.conn.execute(
        """CREATE TABLE events (
            n INTEGER PRIMARY KEY AUTOINCREMENT,
            device TEXT NOT NULL REFERENCES devices(device),
            seq INTEGER NOT NULL,
            hash TEXT NOT NULL,
            prev TEXT NOT NULL,
            kind TEXT NOT NULL,
            job TEXT,
            body TEXT NOT NULL,
            received_at INTEGER NOT NULL,
            UNIQUE (device, seq)
        ) STRICT"""
    )
    db.conn.execute("CREATE INDEX events_by_job ON events (job, n)")
    for verb in ("UPDATE", "DELETE"):
        db.conn.execute(
            f"""CREATE TRIGGER events_refuse_{verb.lower()} BEFORE {verb} ON events
            BEGIN SELECT RAISE(ABORT, 'events are only ever appended'); END"""
        )
    db.conn.execute(
        """CREATE TABLE event_units (
            unit TEXT NOT NULL,
            n INTEGER NOT NULL REFERENCES events(n),
            PRIMARY KEY (unit, n)
        ) STRICT, WITHOUT ROWID"""
    )
    db.conn.execute(
        """CREATE TABLE quarantine (
            id INTEGER PRIMARY KEY,
            device TEXT NOT NULL,
            seq INTEGER NOT NULL,
            hash TEXT NOT NULL,
            body TEXT NOT NULL,
            reason TEXT NOT NULL,
            received_at INTEGER NOT NULL,
            UNIQUE (device, seq, hash)
        ) STRICT"""
    )


@migrations()
def make_photos(db: Database) -> None:
    """What is in the photo folder, and which events name a photo, stored yet or not."""
    db.conn.execute(
        """CREATE TABLE photos (
            sha256 TEXT PRIMARY KEY,
            bytes INTEGER NOT NULL,
            width INTEGER NOT NULL,
            height INTEGER NOT NULL,
            stored_at INTEGER NOT NULL
        ) STRICT"""
    )
    db.conn.execute(
        """CREATE TABLE event_photos (
            sha256 TEXT NOT NULL,
            n INTEGER NOT NULL REFERENCES events(n),
            PRIMARY KEY (sha256, n)
        ) STRICT, WITHOUT ROWID"""
    )


@migrations()
def make_caches(db: Database) -> None:
    """Answers of the core, good for one length of the log and one core. Safe to drop."""
    for name in ("job_cache", "unit_cache"):
        db.conn.execute(
            f"""CREATE TABLE {name} (
                question TEXT PRIMARY KEY,
                upto INTEGER NOT NULL,
                core TEXT NOT NULL,
                answer TEXT NOT NULL
            ) STRICT"""
        )


@migrations()
def make_labels(db: Database) -> None:
    """Every code that was ever printed, so that none is printed twice."""
    db.conn.execute(
        """CREATE TABLE label_batches (
            id INTEGER PRIMARY KEY,
            made_at INTEGER NOT NULL,
            base TEXT NOT NULL
        ) STRICT"""
    )
    db.conn.execute(
        """CREATE TABLE labels (
            code TEXT PRIMARY KEY,
            batch INTEGER NOT NULL REFERENCES label_batches(id)
        ) STRICT"""
    )


@migrations()
def make_folded_state(db: Database) -> None:
    """The state that the core folds, entity by entity, so that no question needs the whole log."""
    db.conn.execute(
        """CREATE TABLE folded (
            kind TEXT NOT NULL,
            id TEXT NOT NULL,
            bucket INTEGER NOT NULL,
            body TEXT NOT NULL,
            PRIMARY KEY (kind, id, bucket)
        ) STRICT"""
    )
    db.conn.execute("CREATE INDEX folded_by_bucket ON folded (bucket)")
    db.conn.execute(
        """CREATE TABLE folded_links (
            link TEXT NOT NULL,
            id TEXT NOT NULL,
            PRIMARY KEY (link, id)
        ) STRICT, WITHOUT ROWID"""
    )
    db.conn.execute(
        """CREATE TABLE folded_mark (
            id INTEGER PRIMARY KEY CHECK (id = 1),
            version TEXT NOT NULL,
            upto INTEGER NOT NULL,
            corrections INTEGER NOT NULL,
            fine_from INTEGER NOT NULL
        ) STRICT"""
    )
    db.conn.execute(
        """CREATE TABLE withdrawn (
            device TEXT NOT NULL,
            seq INTEGER NOT NULL,
            actor TEXT NOT NULL,
            reason TEXT NOT NULL,
            PRIMARY KEY (device, seq)
        ) STRICT, WITHOUT ROWID"""
    )
    db.conn.execute(
        """CREATE TABLE job_list (
            job TEXT PRIMARY KEY,
            closed INTEGER NOT NULL,
            opened_at INTEGER NOT NULL,
            core TEXT,
            line TEXT
        ) STRICT"""
    )
    db.conn.execute("CREATE INDEX job_list_in_order ON job_list (closed, opened_at DESC, job)")
    db.conn.execute("CREATE INDEX events_corrections ON events (n) WHERE kind = 'corrected'")


@migrations()
def make_photos_wanted(db: Database) -> None:
    """The photos that an event names and nobody has sent yet: asked for at every sync."""
    db.conn.execute(
        # The key's columns first: elsewhere SQLite 3.40 takes their order for damage (integrity_check).
        """CREATE TABLE photos_wanted (
            device TEXT NOT NULL,
            n INTEGER NOT NULL REFERENCES events(n),
            sha256 TEXT NOT NULL,
            PRIMARY KEY (device, n)
        ) STRICT, WITHOUT ROWID"""
    )
    db.conn.execute("CREATE INDEX photos_wanted_by_photo ON photos_wanted (sha256)")
    db.conn.execute(
        "INSERT INTO photos_wanted SELECT device, n, sha256 FROM event_photos JOIN events USING (n) "
        "WHERE sha256 NOT IN (SELECT sha256 FROM photos)"
    )


@migrations()
def make_record_makers(db: Database) -> None:
    """The keys of other installations whose records were looked at here."""
    db.conn.execute(
        """CREATE TABLE record_makers (
            key TEXT PRIMARY KEY,
            first_met_at INTEGER NOT NULL
        ) STRICT"""
    )


@migrations()
def give_phones_roles(db: Database) -> None:
    """What a phone is for: jobs at the bench, or returns at the parts counter."""
    for table in ("sessions", "pairings"):
        db.conn.execute(f"ALTER TABLE {table} ADD COLUMN role TEXT NOT NULL DEFAULT 'bench'")


@migrations()
def make_search(db: Database) -> None:
    """The words that units and jobs are found by. Safe to drop: they follow from the folded state."""
    db.conn.execute(
        """CREATE TABLE search (
            n INTEGER PRIMARY KEY,
            kind TEXT NOT NULL,
            id TEXT NOT NULL,
            text TEXT NOT NULL,
            UNIQUE (kind, id)
        ) STRICT"""
    )
    # Accents stay: what the index finds is looked at once more by the core, which keeps them too.
    db.table("search").enable_fts(["text"], create_triggers=True, tokenize="unicode61 remove_diacritics 0")
    # A state from before this step has no words and no returns by day: it is folded afresh.
    db.conn.execute("DELETE FROM folded_mark")


@migrations()
def make_label_prints(db: Database) -> None:
    """Each time a batch was written for printing, and the labels that went out of use unused."""
    db.conn.execute("ALTER TABLE label_batches ADD COLUMN layout TEXT NOT NULL DEFAULT '{}'")
    db.conn.execute("ALTER TABLE labels ADD COLUMN void_at INTEGER")
    db.conn.execute("ALTER TABLE labels ADD COLUMN void_reason TEXT")
    db.conn.execute("CREATE INDEX labels_by_batch ON labels (batch)")
    db.conn.execute(
        """CREATE TABLE label_prints (
            id INTEGER PRIMARY KEY,
            batch INTEGER NOT NULL REFERENCES label_batches(id),
            begun_at INTEGER NOT NULL,
            done_at INTEGER,
            labels INTEGER NOT NULL
        ) STRICT"""
    )


@migrations()
def note_what_phones_promise(db: Database) -> None:
    """Whether a phone's browser promised to keep its data, and whether the app is on its home screen."""
    for column in ("promised", "installed"):
        db.conn.execute(f"ALTER TABLE devices ADD COLUMN {column} INTEGER")


@migrations()
def make_pairing_log(db: Database) -> None:
    """Who was let in, who failed to be, who was put out: when, from which address."""
    db.conn.execute(
        """CREATE TABLE pairing_log (
            id INTEGER PRIMARY KEY AUTOINCREMENT,
            at INTEGER NOT NULL,
            what TEXT NOT NULL CHECK (what IN ('paired', 'failed', 'put_out')),
            name TEXT NOT NULL,
            role TEXT NOT NULL,
            address TEXT NOT NULL,
            device TEXT NOT NULL,
            by TEXT NOT NULL
        ) STRICT"""
    )
    db.conn.execute("CREATE INDEX pairing_log_by_what ON pairing_log (what, id)")


@migrations()
def make_righted(db: Database) -> None:
    """What entries should have said, beside what was taken back. Safe to drop: it follows from the log."""
    db.conn.execute(
        """CREATE TABLE righted (
            device TEXT NOT NULL,
            seq INTEGER NOT NULL,
            said TEXT NOT NULL,
            PRIMARY KEY (device, seq)
        ) STRICT, WITHOUT ROWID"""
    )
    db.conn.execute("DROP INDEX events_corrections")
    db.conn.execute("CREATE INDEX events_corrections ON events (n) WHERE kind IN ('corrected', 'put_right')")


@migrations()
def fold_again_in_part(db: Database) -> None:
    """What each bucket of entries asked for when it was folded, and links that were once.

    With it a correction folds again what follows from it alone. The state is folded afresh.
    """
    db.conn.execute("DROP TABLE folded_mark")
    db.conn.execute(
        """CREATE TABLE folded_mark (
            id INTEGER PRIMARY KEY CHECK (id = 1),
            version TEXT NOT NULL,
            upto INTEGER NOT NULL,
            corrections INTEGER NOT NULL
        ) STRICT"""
    )
    db.conn.execute(
        """CREATE TABLE folded_asked (
            name TEXT NOT NULL,
            bucket INTEGER NOT NULL,
            PRIMARY KEY (name, bucket)
        ) STRICT, WITHOUT ROWID"""
    )
    db.conn.execute(
        """CREATE TABLE folded_links_before (
            link TEXT NOT NULL,
            id TEXT NOT NULL,
            PRIMARY KEY (link, id)
        ) STRICT, WITHOUT ROWID"""
    )
    db.conn.execute("CREATE TABLE folded_again (n INTEGER PRIMARY KEY) STRICT")


@migrations()
def note_lost_photos(db: Database) -> None:
    """When each photo was looked at, and those whose bytes are gone or were changed since."""
    db.conn.execute("ALTER TABLE photos ADD COLUMN checked_at INTEGER NOT NULL DEFAULT 0")
    db.conn.execute("CREATE INDEX photos_by_check ON photos (checked_at)")
    db.conn.execute(
        """CREATE TABLE photos_lost (
            sha256 TEXT PRIMARY KEY,
            what TEXT NOT NULL CHECK (what IN ('missing', 'changed')),
            found_at INTEGER NOT NULL
        ) STRICT"""
    )


@migrations()
def make_certificates(db: Database) -> None:
    """The keys of phones, the ends of chains that they signed, and what was brought without such proof."""
    db.conn.execute(
        """CREATE TABLE certificates (
            device TEXT NOT NULL,
            role TEXT NOT NULL,
            name TEXT NOT NULL,
            key TEXT NOT NULL,
            since INTEGER NOT NULL,
            issuer TEXT NOT NULL,
            signature TEXT NOT NULL,
            ended_at INTEGER,
            PRIMARY KEY (device, since)
        ) STRICT, WITHOUT ROWID"""
    )
    db.conn.execute(
        """CREATE TABLE heads (
            device TEXT NOT NULL,
            seq INTEGER NOT NULL,
            hash TEXT NOT NULL,
            signature TEXT NOT NULL,
            PRIMARY KEY (device, seq)
        ) STRICT, WITHOUT ROWID"""
    )
    db.conn.execute(
        """CREATE TABLE unproven (
            id INTEGER PRIMARY KEY,
            device TEXT NOT NULL,
            seq INTEGER NOT NULL,
            hash TEXT NOT NULL,
            body TEXT NOT NULL,
            brought_by INTEGER REFERENCES sessions(id),
            at INTEGER NOT NULL,
            proven INTEGER NOT NULL DEFAULT 0,
            set_aside_at INTEGER,
            UNIQUE (device, seq, hash)
        ) STRICT"""
    )


@migrations()
def make_lessons(db: Database) -> None:
    """What each closed job contributes to the yard's figures, by the version of what worked it out."""
    db.conn.execute(
        """CREATE TABLE lessons (
            job TEXT PRIMARY KEY,
            version TEXT NOT NULL,
            body TEXT NOT NULL
        ) STRICT, WITHOUT ROWID"""
    )


@migrations()
def confirm_record_makers(db: Database) -> None:
    """Whose a met key is, by whom and how its fingerprint was confirmed; "" where nobody did."""
    for column in ("name", "how", "confirmed_by"):
        db.conn.execute(f"ALTER TABLE record_makers ADD COLUMN {column} TEXT NOT NULL DEFAULT ''")
    db.conn.execute("ALTER TABLE record_makers ADD COLUMN confirmed_at INTEGER")


@migrations()
def keep_records(db: Database) -> None:
    """Records from elsewhere that are evidence for a returned sensor, whole and with their seals."""
    db.conn.execute(
        """CREATE TABLE records_kept (
            sha256 TEXT PRIMARY KEY,
            key TEXT NOT NULL,
            kept_at INTEGER NOT NULL,
            body BLOB NOT NULL
        ) STRICT"""
    )


@migrations()
def list_search_terms(db: Database) -> None:
    """The words of the search's index by themselves, to look for those that come near a typed one."""
    db.conn.execute("CREATE VIRTUAL TABLE search_terms USING fts5vocab(search_fts, row)")


@migrations()
def tell_lessons_apart(db: Database) -> None:
    """The digest of what a job contributes, so that what was read before is not read again."""
    db.conn.execute("DELETE FROM lessons")
    db.conn.execute("ALTER TABLE lessons ADD COLUMN digest TEXT NOT NULL DEFAULT ''")
    db.conn.execute("CREATE INDEX lessons_by_version ON lessons (version, job, digest)")


@migrations()
def note_phones(db: Database) -> None:
    """What is said of a phone from one of its entries on: its role, in whose name it is, who shares it.

    Of phones that have a certificate by now it is said from the first entry that came in after that. Nobody
    was asked who shares one until now: whoever has a name on it already does.
    """
    db.conn.execute(
        """CREATE TABLE phones (
            n INTEGER PRIMARY KEY AUTOINCREMENT,
            device TEXT NOT NULL,
            from_seq INTEGER NOT NULL,
            role TEXT NOT NULL,
            name TEXT NOT NULL,
            people TEXT NOT NULL DEFAULT '[]'
        ) STRICT"""
    )
    db.conn.execute("CREATE INDEX phones_by_device ON phones (device, from_seq, n)")
    db.conn.execute(
        """INSERT INTO phones (device, from_seq, role, name, people)
        SELECT device, 1 + (SELECT coalesce(max(seq), 0) FROM events
            WHERE events.device = certificates.device AND received_at < since), role, name,
            (SELECT json_group_array(DISTINCT json_extract(body, '$.actor')) FROM events
            WHERE device = certificates.device AND json_extract(body, '$.actor') NOT IN ('', name))
        FROM certificates ORDER BY since"""
    )


@migrations()
def make_lessons_given(db: Database) -> None:
    """Figures that other yards gave, by the key of their seal, each with what it weighs in hundredths."""
    db.conn.execute(
        """CREATE TABLE lessons_given (
            key TEXT PRIMARY KEY,
            number INTEGER NOT NULL,
            weight INTEGER NOT NULL,
            weighed_at INTEGER NOT NULL,
            body TEXT NOT NULL
        ) STRICT, WITHOUT ROWID"""
    )


@migrations()
def bound_what_is_kept_apart(db: Database) -> None:
    """Who brought what left its chain, and what is only laid by until a signed chain is whole."""
    db.conn.execute("ALTER TABLE quarantine ADD COLUMN brought_by INTEGER REFERENCES sessions(id)")
    db.conn.execute("ALTER TABLE unproven ADD COLUMN laid_by INTEGER NOT NULL DEFAULT 0")
    db.conn.execute("CREATE INDEX quarantine_by_bringer ON quarantine (brought_by)")
    db.conn.execute("CREATE INDEX unproven_by_bringer ON unproven (brought_by)")


@migrations()
def note_the_size_of_what_is_kept_apart(db: Database) -> None:
    """How many bytes each entry takes, so that the room that is left is known without reading them."""
    for table in ("quarantine", "unproven"):
        db.conn.execute(f"ALTER TABLE {table} ADD COLUMN size INTEGER NOT NULL DEFAULT 0")
        db.conn.execute(f"UPDATE {table} SET size = length(CAST(body AS BLOB))")
        db.conn.execute(f"DROP INDEX {table}_by_bringer")
    db.conn.execute("CREATE INDEX quarantine_by_bringer ON quarantine (brought_by, size)")
    db.conn.execute("CREATE INDEX unproven_by_bringer ON unproven (brought_by, proven, laid_by, size)")


@migrations()
def number_labels_out_of_use(db: Database) -> None:
    """In which order labels went out of use: a phone asks for those behind the last that it knows."""
    db.conn.execute("ALTER TABLE labels ADD COLUMN void_number INTEGER")
    rows = db.conn.execute(
        "SELECT code FROM labels WHERE void_at IS NOT NULL ORDER BY void_at, code"
    ).fetchall()
    db.conn.executemany(
        "UPDATE labels SET void_number = ? WHERE code = ?",
        [(number, code) for number, (code,) in enumerate(rows, 1)],
    )
    db.conn.execute(
        "CREATE UNIQUE INDEX labels_out_of_use ON labels (void_number) WHERE void_number IS NOT NULL"
    )


@migrations()
def end_earlier_tasks(db: Database) -> None:
    """A phone that was paired for another task kept what spoke for it in the one before."""
    newest = "FROM certificates AS newest WHERE newest.key = certificates.key ORDER BY since DESC LIMIT 1"
    db.conn.execute(
        f"UPDATE certificates SET ended_at = (SELECT since {newest}) "
        f"WHERE ended_at IS NULL AND role <> (SELECT role {newest})"
    )
    ended = "devices JOIN certificates USING (device) WHERE ended_at IS NOT NULL"
    db.conn.execute(
        f"UPDATE sessions SET revoked_at = (SELECT max(ended_at) FROM {ended} AND session = sessions.id) "
        f"WHERE revoked_at IS NULL AND id IN (SELECT session FROM {ended})"
    )
