"""The store: the only place with SQL. `Store.open()` gives the user's jobs and stock."""

from matcher.store.backups import Generation
from matcher.store.faults import (
    NoSuchJob,
    NotAStore,
    StoreDamaged,
    StoreFailing,
    StoreFull,
    StoreGone,
    StoreLocked,
    StoreReadOnly,
    StoreTooNew,
)
from matcher.store.jobs import Change, Held, Saved
from matcher.store.merge import Clash
from matcher.store.offers import OfferLine
from matcher.store.search import JobLine
from matcher.store.shelves import ShelfLine
from matcher.store.store import Store, default_path

__all__ = [
    "Change",
    "Clash",
    "Generation",
    "Held",
    "JobLine",
    "NoSuchJob",
    "NotAStore",
    "OfferLine",
    "Saved",
    "ShelfLine",
    "Store",
    "StoreDamaged",
    "StoreFailing",
    "StoreFull",
    "StoreGone",
    "StoreLocked",
    "StoreReadOnly",
    "StoreTooNew",
    "default_path",
]
