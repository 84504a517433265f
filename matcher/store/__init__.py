"""The store: the only place with SQL. `Store.open()` gives the user's jobs and stock."""

from matcher.store.backups import Generation
from matcher.store.faults import (
    AlreadyThere,
    NotAStore,
    NotInStore,
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
    "AlreadyThere",
    "Change",
    "Clash",
    "Generation",
    "Held",
    "JobLine",
    "NotAStore",
    "NotInStore",
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
