"""How a number becomes a claim on a field: one small function a quantity.

Each says whether the run of digits can be that quantity at all (`None`: it can't, another owner is
looked for) and returns the fields and values it gives; an empty dictionary means that the number is
spent and gives nothing (locked-rotor amps, an appliance's tonnage).
"""

import itertools
import re
from collections.abc import Callable, Mapping

from matcher.numeral import Numeral, numeral
from matcher.units import WATTS_PER_HP

Given = Mapping[str, object]
NOTHING: Given = {}
_LOST_STROKE = frozenset({"11", "12", "13", "14", "16", "17", "18", "19"})
"""Powers that no motor has; `1/2`, `1/3` look so when a scan loses the stroke."""
_MIXED = re.compile(r"\d[.,][1-7]/[2-8]")
_LISTED = re.compile(r"\d/\d{1,2}(?:,\d/\d{1,2})+")
_UNCLEAR = re.compile(r"1-[2-8]")
"""`HP 1-4`: who has no key for the stroke means 1/4."""
_THOUSANDS = re.compile(r"(?<!\d)\d\.\d{3}(?!\d)")
_BARE_SPEEDS = frozenset(
    {825, 850, 875, 900, 950, 1050, 1075, 1100, 1140, 1300, 1350, 1400, 1425}
    | {1500, 1550, 1625, 1650, 1700, 1725, 1740, 1745, 1750, 2800, 2850, 3000, 3250, 3450}
)
BARE_SPEED = frozenset({825, 1050, 1075, 1100, 1140, 1550, 1625, 1725, 1750, 3450})
_BARE_VOLTS = re.compile(
    r"(?:1(?:10|15|20)[/-])?(?:2(?:00|08)[/-]2(?:30|40)(?:/460)?|220[/-]240)|1(?:10|15|20)/2(?:20|30|40)"
    r"|230/4(?:00|60)|220/380|277/480"
)
_TRIPLE = re.compile(r"(\d{3}(?:[-/]\d{3})*)[/-](?:(50|60)[/-]([13])|([13])[/-](50|60))")


CAPACITOR_VOLTS = frozenset({250, 330, 350, 370, 400, 440, 450, 475, 480, 500, 600, 660})
_WIDE = frozenset(
    {(100.0, 240.0), (100.0, 250.0), (90.0, 264.0), (85.0, 265.0), (100.0, 277.0), (120.0, 277.0)}
    | {(110.0, 277.0), (115.0, 277.0)}
)
"""Ranges of electronic supplies: with `-` no alternatives, however far apart."""
_WIDEST = 1.35
_EUROPEAN, _AMERICAN = frozenset({380.0, 400.0, 415.0}), frozenset({440.0, 460.0, 480.0})
"""Three-phase supplies at 50 and at 60 Hz: near as they are, `380/460` names two."""
_RUN_TOGETHER: Mapping[str, tuple[float, ...]] = {
    f"{one:g}{two:g}": (one, two)
    for one, two in ((208.0, 230.0), (115.0, 230.0), (230.0, 460.0), (220.0, 240.0), (120.0, 240.0))
}
"""Pairs whose sign a scan loses: `208230`."""


def power(number: Numeral) -> Given | None:
    """hp: the largest of a list; ratings of this trade lie between 1/200 and 10 hp."""
    if "," in number.text and _LISTED.fullmatch(number.text):
        number = numeral(number.text.replace(",", "-"))  # `1/2,1/3,1/5`
    if (number.signs == "/" and not number.whole) or _UNCLEAR.fullmatch(number.text):
        return _power_of_tenths(number) if "/" in number.signs else NOTHING
    shares = (number.value,) if number.value is not None else number.shares
    shares = shares or tuple(_pairs(number))
    if not shares or not all(0.001 <= share <= 20 for share in shares):
        return None
    if number.text in _LOST_STROKE:
        return NOTHING
    return {"power_hp": round(max(shares), 4)}


def _power_of_tenths(number: Numeral) -> Given | None:
    """`1.5/0.19 HP`: two powers, no fraction; `1.1/2` is a misread `1-1/2`, or is it?"""
    if _MIXED.fullmatch(number.text):
        return NOTHING
    return {"power_hp": max(number.atoms)} if all(0.001 <= atom <= 20 for atom in number.atoms) else None


def _pairs(number: Numeral) -> list[float]:
    """Read `1/2/1/3/1/5` or `.5/.33`: figures in pairs, or as they stand when they are decimals."""
    atoms = number.atoms
    if set(number.signs) != {"/"}:
        return []
    if number.whole and len(atoms) % 2 == 0:
        return [top / below for top, below in zip(atoms[::2], atoms[1::2], strict=True) if below]
    return list(atoms)


def _watts(scale: float) -> Callable[[Numeral], Given | None]:
    def read(number: Numeral) -> Given | None:
        watts = max(number.atoms, default=0.0) * scale
        if not 1 <= watts <= 15_000:
            return None
        return {"power_hp": round(watts / WATTS_PER_HP, 4)}

    return read


def volts(number: Numeral) -> Given | None:
    """Supply volts: ranges with `-`, alternatives with `/`, ascending; under 100 V is a control's."""
    atoms = sorted(set(_RUN_TOGETHER.get(number.text, number.atoms)))
    if not atoms or not all(2 <= volt <= 700 and volt % 1 == 0 for volt in atoms):
        return None
    if atoms[0] < 100:
        return NOTHING
    if number.signs == "-" and len(atoms) == 2 and (atoms[1] <= 1.5 * atoms[0] or tuple(atoms) in _WIDE):
        return {"volts": f"{atoms[0]:g}-{atoms[1]:g}"}
    groups: list[list[float]] = []
    listed = "-" not in number.text and "–" not in number.text
    for volt in atoms:
        # Two figures of one rating lie within a quarter of each other: 208-230, 220-240, 110-127.
        # Two that a hyphen joins lie not much farther: 380-480.
        joined = bool(groups) and f"{groups[-1][-1]:g}-{volt:g}" in number.text
        apart = listed and bool(groups) and groups[-1][0] in _EUROPEAN and volt in _AMERICAN
        if groups and not apart and volt <= groups[-1][0] * (_WIDEST if joined else 1.25):
            groups[-1].append(volt)
        else:
            groups.append([volt])
    said = ["-".join(f"{volt:g}" for volt in (group[0], group[-1])[: len(group)]) for group in groups]
    return {"volts": "/".join(said)}


def hertz(number: Numeral) -> Given | None:
    """50, 60 or both; `2850/50 Hz` has the speed before it."""
    if _is_at_cycles(number):
        return speed(number)
    atoms = sorted(set(number.atoms))
    if not atoms or not set(atoms) <= {50.0, 60.0}:
        return None
    return {"hertz": "/".join(f"{hertz:g}" for hertz in atoms)}


def amps(number: Numeral) -> Given | None:
    """Full-load amperes, highest first, each figure once."""
    if not number.atoms or not all(0.01 <= amp <= 80 for amp in number.atoms):
        return None
    return {"amps": tuple(sorted(set(number.atoms), reverse=True))}


def speed(number: Numeral) -> Given | None:
    """rpm: `1075/950/825` is a list (its length the speeds), `250-1450` a range, `1075/3` has the taps."""
    atoms = list(number.atoms)
    lowest = 700 if "-" in number.signs else 200  # `300-1` is a torn range
    if len(atoms) > 1 and number.whole and min(atoms[:-1]) >= lowest and 1 <= atoms[-1] <= 8:
        return {"rpm": tuple(sorted({*map(int, atoms[:-1])}, reverse=True)), "speeds": int(atoms[-1])}
    if _is_at_cycles(number):
        return {"rpm": (int(atoms[0]),), "hertz": f"{atoms[1]:g}"}
    if not number.whole:
        atoms = [
            round(atom * 1000) if _THOUSANDS.search(number.text) and atom < 8 else atom for atom in atoms
        ]
    if not atoms or not all(100 <= atom <= 8000 for atom in atoms):
        return None
    speeds = tuple(sorted({int(atom) for atom in atoms}, reverse=True))
    if len(atoms) == 2 and ((atoms[0] < atoms[1] and number.signs == "-") or max(atoms) > 2.6 * min(atoms)):
        return {"rpm_range": (speeds[1], speeds[0])}
    if len(speeds) > 1:
        return {"rpm": speeds, "speeds": len(speeds)}
    return {"rpm": speeds}


def _is_at_cycles(number: Numeral) -> bool:
    """`2850/50`: a speed at its frequency."""
    return number.whole and number.signs == "/" and number.atoms[0] >= 700 and number.atoms[1] in (50, 60)


def phase(number: Numeral) -> Given | None:
    """1 or 3."""
    return {"phase": int(number.value)} if number.value in (1, 3) else None


def phase_or_cycles(number: Numeral) -> Given | None:
    """`3~` is a phase, `60~` the old way to write cycles."""
    return phase(number) or hertz(number)


def taps(number: Numeral) -> Given | None:
    """Number of speeds or taps."""
    value = number.value
    if number.signs == "-" and number.atoms[0] == 1 and number.whole:
        value = number.atoms[-1]  # `TAPS 1-5`
    if number.signs in ("/", "-") and number.atoms[0] >= 200:
        return speed(number)
    return {"speeds": int(value)} if value is not None and value % 1 == 0 and 1 <= value <= 12 else None


def service_factor(number: Numeral) -> Given | None:
    """Between 1.0 and 2."""
    return {"service_factor": number.value} if number.value is not None and 1 <= number.value <= 2 else None


def are_two_sizes(number: Numeral) -> bool:
    """`45/5`: a dual capacitor's sizes; no fraction as in `7 1/2`."""
    return "/" in number.signs and number.text[-2:] not in ("/2", "/4") and number.text[-1] not in "½¼¾"


def microfarad(number: Numeral) -> Given | None:
    """A run capacitor's size; larger ones are start capacitors and give nothing."""
    if number.signs == "/" and number.atoms[1] in CAPACITOR_VOLTS and number.atoms[0] <= 100:
        return {"capacitor_uf": number.atoms[0], "capacitor_vac": int(number.atoms[1])}  # `MFD 15/370`
    if number.value is None or are_two_sizes(number) or not 0.5 <= number.value <= 100:
        return NOTHING
    return {"capacitor_uf": number.value}


def nothing(number: Numeral) -> Given | None:
    """A number that belongs to something without a field."""
    return NOTHING if number.atoms else None


def power_of_pair(number: Numeral) -> Given | None:
    """`KW/HP 0.75/1.0`: the second figure is the hp."""
    return {"power_hp": number.atoms[1]} if len(number.atoms) == 2 and number.signs == "/" else None


def power_before_watts(number: Numeral) -> Given | None:
    """`15/11.2 HP/KW`: the first figure is the hp."""
    return {"power_hp": number.atoms[0]} if len(number.atoms) == 2 and number.signs == "/" else None


def _go_down(shares: tuple[float, ...]) -> bool:
    return all(one > two for one, two in itertools.pairwise(shares)) and shares[0] <= 1


def _are_speeds(figures: list[float]) -> bool:
    """`1100/950/800`: going down by steps, within the speeds of small motors."""
    steps = itertools.pairwise(figures)
    return all(350 <= figure <= 3600 for figure in figures) and all(
        0.5 * one <= two < one for one, two in steps
    )


def by_look(number: Numeral) -> Given:
    """Return what a figure without unit or label can only be: usual speeds, supply pairs, `460/60/1`."""
    if number.text[:1] == "0" and number.text[1:].isdigit():
        return NOTHING  # `Hits: 001725`
    triple = _TRIPLE.fullmatch(number.text)
    if triple:
        supply = volts(numeral(triple[1])) or NOTHING
        return {**supply, "hertz": triple[2] or triple[5], "phase": int(triple[3] or triple[4])}
    if (
        len(number.atoms) == 2
        and number.signs in ("/", "-")
        and number.atoms[1] in (370, 440)
        and number.atoms[0] <= 80
    ):
        return {"capacitor_uf": number.atoms[0], "capacitor_vac": int(number.atoms[1])}
    if len(number.shares) >= 3 and number.text.count("/") == len(number.shares) and _go_down(number.shares):
        return power(number) or NOTHING  # `1/2-1/3-1/4`
    if _BARE_VOLTS.fullmatch(number.text):
        return volts(number) or NOTHING
    speeds = [atom for atom in number.atoms if atom >= 100]
    listed = len(number.atoms) > 1 and len(speeds) == len(number.atoms) and _are_speeds(speeds)
    if (
        speeds
        and number.whole
        and "-" not in number.signs
        and (
            (len(speeds) == 1 and speeds[0] in BARE_SPEED)
            or listed
            or (len(speeds) > 1 and set(speeds) <= _BARE_SPEEDS)
        )
    ):
        return speed(number) or NOTHING
    return NOTHING


READERS: Mapping[str, Callable[[Numeral], Given | None]] = {
    "hp": power,
    "kw/hp": power_of_pair,
    "hp/kw": power_before_watts,
    "kw": _watts(1000.0),
    "w_out": _watts(1.0),
    "w": nothing,
    "w_in": nothing,
    "v": volts,
    "vdc": nothing,
    "hz": hertz,
    "a": amps,
    "A": amps,
    "rla": amps,
    "rpm": speed,
    "ph": phase,
    "ph~": phase_or_cycles,
    "spd": taps,
    "sf": service_factor,
    "uf": microfarad,
    "swallow": nothing,
}
