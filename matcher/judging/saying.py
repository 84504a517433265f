"""Values in the words that people in the trade say.

>>> inches(0.5), inches(5.625), inches(0.6693), horsepower(0.3333)
('1/2 in', '5 5/8 in', '0.6693 in', '1/3 hp')
"""

from collections.abc import Iterable, Mapping
from fractions import Fraction
from functools import cache, lru_cache

from matcher import tables
from matcher.finding import Finding, Outcome, Verdict

VERDICTS: Mapping[str | None, str] = {
    Verdict.FITS: "fits",
    Verdict.FITS_WITH_WORK: "fits with work",
    Verdict.ASK: "ask first",
    Verdict.POOR: "poor",
    Verdict.WONT_FIT: "won't fit",
    None: "not a motor",
}
"""Every verdict as people say it; None is a part that is no motor."""


def verdict(verdict: str | None, minds: int = 0) -> str:
    """Say a verdict; with what is still to mind where it fits, so that no small loss hides behind it.

    >>> verdict("fits"), verdict("fits", 1), verdict("fits", 2)
    ('fits', 'fits, mind 1 thing', 'fits, mind 2 things')
    """
    words = VERDICTS[verdict]
    return f"{words}, mind {minds} thing{'s' if minds > 1 else ''}" if minds else words


OUTCOMES: Mapping[str, str] = {
    Outcome.SAME: "same",
    Outcome.OK: "differs, harmless",
    Outcome.LOSS: "costs points",
    Outcome.UNKNOWN: "not known",
    Outcome.FAIL: "does not fit",
}
"""Every outcome of a check as people say it."""
HARMLESS = "nothing against it"
"""What a check answers that finds no harm where the two aren't known to differ."""
DECISIONS: Mapping[str, str] = {"keep": "kept", "send_back": "goes back"}
"""What becomes of a motor that was bought, as people say it."""
CONDITIONS: Mapping[str, str] = {
    "new": "new",
    "open_box": "open box",
    "rebuilt": "rebuilt",
    "used_tested": "used, tested",
    "used": "used",
    "for_parts": "for parts",
}
TURNS: Mapping[str, str] = {"cw": "clockwise", "ccw": "counter-clockwise", "either": "either way"}
VIEWS: Mapping[str, str] = {"lead_end": "the lead end", "shaft_end": "the shaft end"}
_CHOICES: Mapping[str, Mapping[str, str]] = {
    "turn": TURNS,
    "seen_from": VIEWS,
    "condition": CONDITIONS,
    "mounting": {
        "band": "belly band",
        "studs": "through studs",
        "lugs": "lugs on the shell",
        "cradle": "rubber cradle",
        "rigid_base": "rigid base",
        "face": "flat face",
        "yoke": "yoke",
    },
    "module": {"with": "comes with it", "without": "without it", "module_only": "the module alone"},
    "protector": {"auto": "automatic", "manual": "manual", "impedance": "impedance", "none": "none"},
    "control_signal": {
        "taps_24v": "24 V taps",
        "pwm": "PWM",
        "serial": "serial data",
        "thermostat": "thermostat",
    },
    "motor_type": {
        "psc": "PSC",
        "split_phase": "split phase",
        "capacitor_start": "capacitor start",
        "shaded_pole": "shaded pole",
        "ecm": "ECM",
        "ecm_torque": "ECM, constant torque",
        "ecm_airflow": "ECM, constant airflow",
        "polyphase": "polyphase",
    },
    "item": {"module": "a module alone", "part": "another part"},
}
_KINDS = {
    "psc": "a permanent split capacitor motor",
    "split_phase": "a split-phase motor",
    "capacitor_start": "a capacitor-start motor",
    "shaded_pole": "a shaded-pole motor",
    "ecm": "an electronically commutated motor of unsaid control",
    "ecm_torque": "a constant-torque electronic motor",
    "ecm_airflow": "a constant-airflow electronic motor",
    "polyphase": "a three-phase motor",
}
_MOUNTINGS = {
    "band": "a belly band",
    "studs": "studs",
    "lugs": "lugs",
    "cradle": "a resilient cradle",
    "rigid_base": "a rigid base",
    "face": "a C-face",
    "yoke": "a yoke",
}


def outcome(found: Finding) -> str:
    """Say what a check found; that the two differ only where both are known and not alike.

    >>> outcome(Finding("drive", Outcome.OK, why="", source=""))
    'nothing against it'
    """
    differs = found.old and found.new and found.old != found.new
    return OUTCOMES[found.outcome] if differs or found.outcome is not Outcome.OK else HARMLESS


@lru_cache(maxsize=4096)
def inches(value: float | None) -> str:
    """Say a length in inches: a fraction down to 1/16 where it is one, else a decimal."""
    if value is None:
        return ""
    sixteenths = Fraction(round(value * 16), 16)
    if sixteenths and abs(float(sixteenths) - value) < 1e-6:
        return f"{mixed(sixteenths)} in"
    return f"{value:.4f}".rstrip("0").rstrip(".") + " in"


def percent(share: float) -> str:
    """Say a share as whole per cents or as many decimals as it needs: `10 %` for 0.1.

    >>> percent(1.1 - 1), percent(0.125)
    ('10 %', '12.5 %')
    """
    return f"{100 * share:g} %"


def mixed(value: Fraction) -> str:
    """Say a number as a whole and a fraction: `5 5/8`, `1/2`, `6`."""
    whole, rest = divmod(value, 1)
    if not rest:
        return str(whole)
    return f"{whole} {rest}" if whole else str(rest)


@lru_cache(maxsize=4096)
def horsepower(value: float | None) -> str:
    """Say a power in hp: the step of the ratings within 0.5 %, else a decimal."""
    if value is None:
        return ""
    for rating, said in _powers():
        if abs(rating - value) <= 0.005 * value:
            return f"{said} hp"
    return f"{value:g} hp"


@cache
def _powers() -> tuple[tuple[float, str], ...]:
    return tuple((tables.number(row, "hp"), row["said"].replace("-", " ")) for row in tables.rows("ratings"))


def volts(value: str | None) -> str:
    """Say rated volts."""
    return f"{value} V" if value else ""


def turn(value: str | None, view: str | None = None) -> str:
    """Say a turn with the end it is seen from, where that is known."""
    if value is None:
        return ""
    words = TURNS[value]
    return f"{words} seen from {VIEWS[view]}" if view and value != "either" else words


def kind(value: str | None) -> str:
    """Say a motor type."""
    return _KINDS.get(value or "", "")


def mounting(values: Iterable[str] | None) -> str:
    """Say how a motor is or can be held."""
    return either([_MOUNTINGS[value] for value in values or ()])


def either(words: Iterable[str]) -> str:
    """Join words with commas and a last "or"."""
    *first, last = list(words) or [""]
    return f"{', '.join(first)} or {last}" if first else last


def both(words: Iterable[str]) -> str:
    """Join words with commas and a last "and"."""
    *first, last = list(words) or [""]
    return f"{', '.join(first)} and {last}" if first else last


@cache
def _fields() -> Mapping[str, tables.Row]:
    return {row["field"]: row for row in tables.rows("fields")}


def fact(name: str) -> str:
    """Say the name of a fact in plain words, in lower case unless it is an abbreviation."""
    known = _fields().get(name)
    label = known["label"] if known else name.replace("_", " ")
    return label if label[:2].isupper() else label[:1].lower() + label[1:]


def unit(name: str) -> str:
    """Say the unit that a fact is kept in; empty for one that has none."""
    known = _fields().get(name)
    return known["unit"] if known else ""


def choice(field: str, value: object) -> str:
    """Say one of a field's values as the trade does; a value that needs no other word as it is.

    >>> choice("motor_type", "psc"), choice("protector", "auto"), choice("leads", True)
    ('PSC', 'automatic', 'yes')
    """
    if isinstance(value, bool):
        return "yes" if value else "no"
    return _CHOICES.get(field, {}).get(str(value), str(value))


def cut(words: str, most: int) -> str:
    """Say words of others within so many characters, cut after a whole word where they are longer.

    >>> cut("fan motor out of a furnace", 30), cut("fan motor out of a furnace", 20)
    ('fan motor out of a furnace', 'fan motor out of a…')
    """
    if len(words) <= most:
        return words
    kept = words[:most]
    return f"{(kept.rpartition(' ')[0] or kept).rstrip(' .,;:-')}…"


def check(name: str) -> str:
    """Say the name of a check as a row's label."""
    return name.replace("_", " ").capitalize()
