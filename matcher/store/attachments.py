"""Pictures and original files, kept under the SHA-256 of their bytes.

Names from outside never become file names: the same bytes are kept once, whatever they are called.
"""

import hashlib

from sqlite_utils import Database

from matcher.errors import UnreadableInput
from matcher.job.text import now
from matcher.store.connection import change
from matcher.store.faults import NotInStore

LARGEST = 64 * 1024 * 1024
"""Bytes of one picture or page."""


def add(db: Database, content: bytes) -> str:
    """Keep bytes and return their digest. Raises `UnreadableInput` for more than `LARGEST`."""
    if len(content) > LARGEST:
        size = len(content) // 2**20
        raise UnreadableInput(f"a file of {size} MB is too large to keep; the most is {LARGEST // 2**20} MB.")
    digest = hashlib.sha256(content).hexdigest()
    with change(db):
        db.execute(
            "INSERT INTO attachment (digest, added, bytes) VALUES (?, ?, ?) ON CONFLICT DO NOTHING",
            (digest, now(), content),
        )
    return digest


def get(db: Database, digest: str) -> bytes:
    """Return the bytes. Raises `NotInStore` where the store has none of that digest."""
    row = db.execute("SELECT bytes FROM attachment WHERE digest = ?", (digest,)).fetchone()
    if row is None:
        raise NotInStore(f"file {digest:.12}: its content isn't in this store.")
    return bytes(row[0])
