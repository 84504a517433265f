"""The tables of the store.

A job is kept as rows: one for each given value, correction and entry of a stage, so that two windows
may change different things of one job. Values are JSON text. `change` keeps what each value was
before, which is enough to find out what two windows changed and to tell a job's history.
Stock lies apart on shelves, one row an offer, since a shop's list is read as a whole.
"""

FIRST_SHAPE: tuple[str, ...] = (
    """CREATE TABLE job (
        n INTEGER PRIMARY KEY,
        id TEXT NOT NULL UNIQUE,
        version INTEGER NOT NULL,
        name TEXT NOT NULL, place TEXT NOT NULL, note TEXT NOT NULL,
        created TEXT NOT NULL, changed TEXT NOT NULL, removed TEXT,
        shelves TEXT NOT NULL, fallback TEXT NOT NULL, pictures TEXT NOT NULL
    )""",
    "CREATE INDEX job_by_time ON job (changed DESC, n DESC)",
    """CREATE TABLE old_motor (
        job INTEGER PRIMARY KEY REFERENCES job (n) ON DELETE CASCADE,
        plate_text TEXT NOT NULL
    )""",
    # Facts of the old motor (`subject` 'given') and of its place ('site'), with their provenance.
    """CREATE TABLE given (
        n INTEGER PRIMARY KEY,
        job INTEGER NOT NULL REFERENCES job (n) ON DELETE CASCADE,
        subject TEXT NOT NULL, field TEXT NOT NULL,
        value TEXT NOT NULL, origin TEXT NOT NULL, note TEXT NOT NULL, given_at TEXT NOT NULL,
        UNIQUE (job, subject, field)
    )""",
    # `reading` holds the facts read, the words behind each and the conflicts.
    """CREATE TABLE listing (
        n INTEGER PRIMARY KEY,
        job INTEGER NOT NULL REFERENCES job (n) ON DELETE CASCADE,
        id TEXT NOT NULL, place INTEGER NOT NULL,
        title TEXT NOT NULL, text TEXT NOT NULL, source_name TEXT NOT NULL,
        original TEXT NOT NULL, pictures TEXT NOT NULL, decision TEXT NOT NULL, note TEXT NOT NULL,
        reading TEXT NOT NULL, numbers TEXT NOT NULL,
        UNIQUE (job, id)
    )""",
    # Corrections of a listing; the seller's answers are those with the origin 'answered'.
    """CREATE TABLE correction (
        n INTEGER PRIMARY KEY,
        listing INTEGER NOT NULL REFERENCES listing (n) ON DELETE CASCADE,
        field TEXT NOT NULL,
        value TEXT NOT NULL, origin TEXT NOT NULL, note TEXT NOT NULL, given_at TEXT NOT NULL,
        UNIQUE (listing, field)
    )""",
    # What the later stages keep: `section` is triage, arrival, proof, ...; `path` a JSON list of keys.
    """CREATE TABLE entry (
        n INTEGER PRIMARY KEY,
        job INTEGER NOT NULL REFERENCES job (n) ON DELETE CASCADE,
        section TEXT NOT NULL, path TEXT NOT NULL, value TEXT NOT NULL,
        UNIQUE (job, section, path)
    )""",
    # The log: `old` is the value before (NULL: it wasn't there), `writer` the window that changed it.
    """CREATE TABLE change (
        n INTEGER PRIMARY KEY AUTOINCREMENT,
        job TEXT NOT NULL, version INTEGER NOT NULL, changed_at TEXT NOT NULL, writer TEXT NOT NULL,
        path TEXT NOT NULL, old TEXT
    )""",
    "CREATE INDEX change_by_job ON change (job, version)",
    """CREATE TABLE shelf (
        n INTEGER PRIMARY KEY,
        id TEXT NOT NULL UNIQUE, name TEXT NOT NULL, note TEXT NOT NULL,
        created TEXT NOT NULL, changed TEXT NOT NULL, removed TEXT
    )""",
    """CREATE TABLE offer (
        n INTEGER PRIMARY KEY,
        shelf INTEGER NOT NULL REFERENCES shelf (n) ON DELETE CASCADE,
        source_name TEXT NOT NULL, title TEXT NOT NULL, text TEXT NOT NULL, numbers TEXT NOT NULL,
        facts TEXT NOT NULL, provenance TEXT NOT NULL, corrections TEXT NOT NULL
    )""",
    "CREATE INDEX offer_by_shelf ON offer (shelf)",
    # Pictures and original files, under the SHA-256 of their bytes; never under a name from outside.
    """CREATE TABLE attachment (
        n INTEGER PRIMARY KEY, digest TEXT NOT NULL UNIQUE, added TEXT NOT NULL, bytes BLOB NOT NULL
    )""",
    "CREATE VIRTUAL TABLE job_search USING fts5 (name, place, note, plate, numbers)",
    """CREATE VIRTUAL TABLE listing_search USING fts5
        (title, text, numbers, content='listing', content_rowid='n')""",
    """CREATE VIRTUAL TABLE offer_search USING fts5
        (title, text, numbers, content='offer', content_rowid='n')""",
    """CREATE TRIGGER listing_added AFTER INSERT ON listing BEGIN
        INSERT INTO listing_search (rowid, title, text, numbers)
        VALUES (new.n, new.title, new.text, new.numbers);
    END""",
    """CREATE TRIGGER listing_taken AFTER DELETE ON listing BEGIN
        INSERT INTO listing_search (listing_search, rowid, title, text, numbers)
        VALUES ('delete', old.n, old.title, old.text, old.numbers);
    END""",
    """CREATE TRIGGER listing_changed AFTER UPDATE OF title, text, numbers ON listing BEGIN
        INSERT INTO listing_search (listing_search, rowid, title, text, numbers)
        VALUES ('delete', old.n, old.title, old.text, old.numbers);
        INSERT INTO listing_search (rowid, title, text, numbers)
        VALUES (new.n, new.title, new.text, new.numbers);
    END""",
    """CREATE TRIGGER offer_taken AFTER DELETE ON offer BEGIN
        INSERT INTO offer_search (offer_search, rowid, title, text, numbers)
        VALUES ('delete', old.n, old.title, old.text, old.numbers);
    END""",
    """CREATE TRIGGER offer_changed AFTER UPDATE OF title, text, numbers ON offer BEGIN
        INSERT INTO offer_search (offer_search, rowid, title, text, numbers)
        VALUES ('delete', old.n, old.title, old.text, old.numbers);
        INSERT INTO offer_search (rowid, title, text, numbers)
        VALUES (new.n, new.title, new.text, new.numbers);
    END""",
)
