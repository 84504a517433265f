"""What frames fix: bolt pattern and shaft height, by the NEMA number or the whole IEC frame.

>>> kinship("56C", "56HZ").value, kinship("143T", "145T").value, kinship("56", "IEC71").value
('equal_nema', 'kin', 'different')
"""

import re
from collections.abc import Mapping
from enum import StrEnum
from functools import cache

from matcher import tables

_NUMBER = re.compile(r"\d+")


class Kinship(StrEnum):
    """How two frames relate."""

    EQUAL_NEMA = "equal_nema"
    EQUAL_IEC = "equal_iec"
    KIN = "kin"
    """143/145 or 182/184: feet share slots, faces are one (NEMA MG 1 Part 4)."""
    DIFFERENT = "different"
    MISSING = "missing"
    """One is not said, or is no frame number."""


def bare_frame(frame: str) -> str:
    """Return a frame in upper case without spaces."""
    return "".join(frame.split()).upper()


def kinship(one: str | None, other: str | None) -> Kinship:
    """Compare two frames: NEMA ones by their leading digits, IEC ones whole."""
    first, second = _key(one), _key(other)
    if not first or not second:
        return Kinship.MISSING
    if first == second:
        return Kinship.EQUAL_IEC if first.startswith("IEC") else Kinship.EQUAL_NEMA
    return Kinship.KIN if frozenset((first, second)) in _pairs() else Kinship.DIFFERENT


def slot_loss(one: str | None, other: str | None) -> float:
    """Return the loss (0 .. 1) of bolting one of two kindred frames to the other's base."""
    return _pairs()[frozenset((_key(one), _key(other)))]


@cache
def _key(frame: str | None) -> str:
    bare = bare_frame(frame or "")
    if bare.startswith("IEC"):
        return bare
    number = _NUMBER.match(bare)
    return number.group() if number else ""


@cache
def _pairs() -> Mapping[object, float]:
    return tables.mapping(
        "frame_pairs",
        lambda row: frozenset((row["one"], row["other"])),
        lambda row: tables.number(row, "base_loss"),
    )
