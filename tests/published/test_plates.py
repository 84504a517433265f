"""What NEMA MG 1, IEC 60072-1, 10 CFR 431 and NIST SP 811 print of frames, ratings and units."""

from fractions import Fraction

import pytest
from scipy import constants

from matcher import tables, units
from matcher.checks.power import step
from matcher.checks.speed import poles
from matcher.trade.frames import Kinship, kinship

pytestmark = pytest.mark.published


def row(table: str, column: str, key: str) -> tables.Row:
    return next(found for found in tables.rows(table) if found[column] == key)


def inches(text: str) -> float:
    return float(sum(Fraction(part) for part in text.split("-")))


# NEMA MG 1 Part 4: frame, D, 2E, 2F, BA, H, N-W, U, R
FRAMES = [
    ("42", "2-5/8", "3-1/2", "1-11/16", "2-1/16", "9/32", "1-1/8", "3/8", "21/64"),
    ("48", "3", "4-1/4", "2-3/4", "2-1/2", "11/32", "1-1/2", "1/2", "29/64"),
    ("48H", "3", "4-1/4", "4-3/4", "2-1/2", "11/32", "1-1/2", "1/2", "29/64"),
    ("56", "3-1/2", "4-7/8", "3", "2-3/4", "11/32", "1-7/8", "5/8", "33/64"),
    ("56H", "3-1/2", "4-7/8", "5", "2-3/4", "11/32", "1-7/8", "5/8", "33/64"),
    ("143T", "3-1/2", "5-1/2", "4", "2-1/4", "11/32", "2-1/4", "7/8", "49/64"),
    ("145T", "3-1/2", "5-1/2", "5", "2-1/4", "11/32", "2-1/4", "7/8", "49/64"),
    ("182T", "4-1/2", "7-1/2", "4-1/2", "2-3/4", "13/32", "2-3/4", "1-1/8", "63/64"),
    ("184T", "4-1/2", "7-1/2", "5-1/2", "2-3/4", "13/32", "2-3/4", "1-1/8", "63/64"),
]


@pytest.mark.parametrize("frame", FRAMES, ids=lambda frame: frame[0])
def test_nema_frames(frame: tuple[str, ...]) -> None:
    found = row("frames", "frame", frame[0])
    for column, value in zip(("d", "e2", "f2", "ba", "h", "nw", "u", "r"), frame[1:], strict=True):
        assert float(found[column]) == pytest.approx(inches(value), abs=1e-5), column


@pytest.mark.parametrize("frame", [frame[0] for frame in FRAMES])
def test_shaft_height_from_the_frame_number(frame: str) -> None:
    """NEMA MG 1 Part 4: two digits are sixteenths of an inch, of three the first two are quarters."""
    digits = "".join(letter for letter in frame if letter.isdigit())
    height = int(digits) / 16 if len(digits) == 2 else int(digits[:2]) / 4
    assert float(row("frames", "frame", frame)["d"]) == height


@pytest.mark.parametrize(
    ("frame", "circle", "rabbet", "shaft"),
    # NEMA MG 1 Part 4, C-face dimensions AJ, AK, U.
    [
        ("42C", "3-3/4", "3", "3/8"),
        ("48C", "3-3/4", "3", "1/2"),
        ("56C", "5-7/8", "4-1/2", "5/8"),
        ("143TC", "5-7/8", "4-1/2", "7/8"),
        ("145TC", "5-7/8", "4-1/2", "7/8"),
        ("182TC", "7-1/4", "8-1/2", "1-1/8"),
        ("184TC", "7-1/4", "8-1/2", "1-1/8"),
    ],
)
def test_nema_faces(frame: str, circle: str, rabbet: str, shaft: str) -> None:
    found = row("faces", "frame", frame)
    assert [float(found[name]) for name in ("aj", "ak", "u")] == [
        inches(circle),
        inches(rabbet),
        inches(shaft),
    ]


@pytest.mark.parametrize(("one", "other"), [("143T", "145T"), ("182T", "184T")])
def test_kindred_frames_differ_only_along_the_foot(one: str, other: str) -> None:
    first, second = row("frames", "frame", one), row("frames", "frame", other)
    differing = {name for name in first if first[name] != second[name]} - {"frame"}
    assert differing == {"f2"}
    assert row("faces", "frame", f"{one}C")["aj"] == row("faces", "frame", f"{other}C")["aj"]
    assert kinship(one, other) is Kinship.KIN


@pytest.mark.parametrize("nema", [frame[0] for frame in FRAMES])
def test_no_iec_shaft_is_a_nema_shaft(nema: str) -> None:
    """IEC 60072-1 (from memory): 9, 11, 14, 19, 24 mm never come within 0.002 in of a NEMA shaft."""
    shaft = float(row("frames", "frame", nema)["u"])
    for found in tables.rows("iec_frames"):
        assert abs(float(found["d"]) * units.INCHES["mm"] - shaft) > 0.002


@pytest.mark.parametrize(
    ("frame", "height", "shaft"), [("IEC56", 56, 9), ("IEC63", 63, 11), ("IEC71", 71, 14), ("IEC80", 80, 19)]
)
def test_iec_frames(frame: str, height: float, shaft: float) -> None:
    # IEC 60072-1, from memory of the standard: the number is the shaft height in mm.
    found = row("iec_frames", "frame", frame)
    assert (float(found["height"]), float(found["d"])) == (height, shaft)


# NEMA MG 1 10.32 (from memory) and 10.32.4: the ratings of small and integral motors.
STEPS = "1/20 1/15 1/12 1/10 1/8 1/6 1/5 1/4 1/3 1/2 3/4 1 1-1/2 2 3 5 7-1/2 10"


@pytest.mark.parametrize(("place", "said"), list(enumerate(STEPS.split())), ids=STEPS.split())
def test_ratings(place: int, said: str) -> None:
    assert step(inches(said)) == place


@pytest.mark.parametrize(
    ("rpm", "count"),
    # Full-load speeds at 60 Hz of NEMA MG 1 10.32 (from memory).
    [
        (3450, 2), (3250, 2), (1725, 4), (1625, 4), (1550, 4), (1140, 6), (1075, 6), (1050, 6), (850, 8), (825, 8),
    ],
)  # fmt: skip
def test_full_load_speeds(rpm: int, count: int) -> None:
    assert poles(rpm, 60) == count


# NEMA MG 1 12.51.1: service factors of open general-purpose motors at 3600, 1800, 1200, 900 rpm.
SERVICE = [
    ("1/12", (1.40, 1.40, 1.40, 1.40)),
    ("1/6", (1.35, 1.35, 1.35, 1.35)),
    ("1/3", (1.35, 1.35, 1.35, 1.35)),
    ("1/2", (1.25, 1.25, 1.25, 1.25)),
    ("3/4", (1.25, 1.25, 1.15, 1.15)),
    ("1", (1.25, 1.15, 1.15, 1.15)),
    ("1-1/2", (1.15, 1.15, 1.15, 1.15)),
]


@pytest.mark.parametrize(("said", "factors"), SERVICE)
def test_service_factors(said: str, factors: tuple[float, ...]) -> None:
    found = {
        float(one["rpm"]): float(one["factor"])
        for one in tables.rows("service_factors")
        if float(one["hp"]) == pytest.approx(inches(said), abs=1e-5)
    }
    assert tuple(found[rpm] for rpm in (3600, 1800, 1200, 900)) == factors


# 10 CFR 431.446(a): per cent at 6, 4, 2 poles, polyphase then capacitor-start.
EFFICIENCIES = [
    (0.25, (67.5, 69.5, 65.6), (62.2, 68.5, 66.6)),
    (0.333333, (71.4, 73.4, 69.5), (66.6, 72.4, 70.5)),
    (0.5, (75.3, 78.2, 73.4), (76.2, 76.2, 72.4)),
    (0.75, (81.7, 81.1, 76.8), (80.2, 81.8, 76.2)),
    (1, (82.5, 83.5, 77.0), (81.1, 82.6, 80.4)),
    (1.5, (83.8, 86.5, 84.0), (None, 83.8, 81.5)),
    (2, (None, 86.5, 85.5), (None, 84.5, 82.9)),
    (3, (None, 86.9, 85.5), (None, None, 84.1)),
]


@pytest.mark.parametrize(("hp", "polyphase", "capacitor"), EFFICIENCIES)
def test_efficiencies(hp: float, polyphase: tuple[float, ...], capacitor: tuple[float, ...]) -> None:
    found = {
        (one["motor_type"], int(one["poles"])): float(one["percent"])
        for one in tables.rows("efficiencies")
        if float(one["hp"]) == hp
    }
    for kind, figures in (("polyphase", polyphase), ("capacitor_start", capacitor)):
        assert [found.get((kind, count)) for count in (6, 4, 2)] == list(figures)


def test_lengths_in_inches() -> None:
    # NIST SP 811 Appendix B.8, through scipy.constants (exact definitions).
    for unit, metres in {"ft": constants.foot, "mm": constants.milli, "cm": constants.centi, "m": 1}.items():
        assert units.INCHES[unit] == pytest.approx(metres / constants.inch, rel=1e-12)


def test_the_trade_s_horsepower_is_the_standard_s_to_its_four_digits() -> None:
    # NIST SP 811 B.8: 550 ft lbf/s = 745.6999 W; plates and their makers round it to 745.7.
    assert pytest.approx(constants.hp, abs=0.001) == units.WATTS_PER_HP
