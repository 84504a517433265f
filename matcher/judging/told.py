"""What a seller has said already of what he can't tell: nobody likes to be asked it again."""

import re
from collections.abc import Mapping
from functools import cache, lru_cache
from typing import NamedTuple

from matcher import tables

NEAR = 60
"""Characters between the word for the plate and the words that it can't be read, in one sentence."""
MOST_READ = 20_000
"""Characters of a text that are looked at; what is worth saying stands before."""
_SENTENCE = re.compile(r"[.;!?\n]")
_WORDS = re.compile(r"[a-z]+")


class Told(NamedTuple):
    """What one seller can't tell."""

    unknown: frozenset[str] = frozenset()
    """Facts that were asked and that the seller doesn't know."""
    plate_unread: bool = False
    """The listing says that the plate can't be read."""


@lru_cache(maxsize=1024)
def says_unread(text: str) -> bool:
    """Tell whether a listing says of the plate that it can't be read."""
    flat = _plain(text[:MOST_READ])
    return any(_is_unread(sentence) for sentence in _SENTENCE.split(flat))


def says_unknown(text: str) -> bool:
    """Tell whether an answer begins with words that say that nobody knows."""
    words = " ".join(_WORDS.findall(_plain(text[:200])))
    return any(f"{words} ".startswith(f"{known} ") for known in _phrases()["unknown"])


def _is_unread(sentence: str) -> bool:
    """Look for the two close together; each found once, so that a long text costs no more than its length."""
    words = f" {' '.join(_WORDS.findall(sentence))} "
    plates = [at for noun in _phrases()["plate"] if (at := words.find(f" {noun} ")) >= 0]
    if not plates:
        return False
    faults = [at for said in _phrases()["unread"] if (at := _affirmed(words, said)) >= 0]
    return any(abs(plate - fault) <= NEAR for plate in plates for fault in faults)


def _affirmed(words: str, said: str) -> int:
    at = words.find(f" {said} ")
    return -1 if words[:at].endswith((" not", " isnt", " arent", " never", " wasnt")) else at


def _plain(text: str) -> str:
    return text.casefold().replace("'", "").replace("\u2019", "")


@cache
def _phrases() -> Mapping[str, tuple[str, ...]]:
    rows = tables.rows("seller_words")
    return {
        means: tuple(row["words"] for row in rows if row["means"] == means)
        for means in ("plate", "unread", "unknown")
    }
