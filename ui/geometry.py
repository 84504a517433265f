"""Outlines of a motor in inches, ready to be scaled and painted.

The origin is the middle of the shaft where it leaves the body; x runs outward along the shaft, so
that two motors laid over each other meet at the face that the wheel sits before. What isn't known is
drawn at a usual size and listed in `unknown`, so that it can be drawn as a guess.
"""

from dataclasses import dataclass
from typing import NamedTuple

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QPainterPath

from matcher.motor import Motor

USUAL: dict[str, float] = {
    "body_diameter_in": 5.6,
    "body_length_in": 5.5,
    "shaft_diameter_in": 0.5,
    "shaft_length_in": 5.0,
}
"""Sizes to draw with while the real ones are not known, inches; common practice, never judged."""


class Sizes(NamedTuple):
    """The four sizes that a drawing needs, inches."""

    body_diameter: float
    body_length: float
    shaft_diameter: float
    shaft_length: float


@dataclass(frozen=True)
class Outline:
    """One motor's side view: paths in inches, and the sizes that are guesses."""

    body: QPainterPath
    shaft: QPainterPath
    mounting: QPainterPath
    sizes: Sizes
    unknown: frozenset[str]

    @property
    def whole(self) -> QPainterPath:
        """Everything together."""
        return self.body.united(self.shaft).united(self.mounting)


def sizes(motor: Motor) -> Sizes:
    """Return the sizes to draw a motor with, inches."""
    return Sizes(*(getattr(motor, name) or usual for name, usual in USUAL.items()))


def outline(motor: Motor) -> Outline:
    """Return the side view of a motor."""
    drawn = sizes(motor)
    mounting = QPainterPath()
    for kind in motor.mounting or ():
        mounting = mounting.united(_MOUNTINGS[kind](drawn))
    return Outline(
        body=_body(drawn),
        shaft=_shaft(drawn, motor.shaft_ends or 1),
        mounting=mounting,
        sizes=drawn,
        unknown=frozenset(name for name in USUAL if getattr(motor, name) is None),
    )


def _box(left: float, top: float, width: float, height: float) -> QPainterPath:
    path = QPainterPath()
    path.addRect(QRectF(left, top, width, height))
    return path


def _body(drawn: Sizes) -> QPainterPath:
    path = QPainterPath()
    half, corner = drawn.body_diameter / 2, min(drawn.body_diameter, drawn.body_length) * 0.08
    path.addRoundedRect(QRectF(-drawn.body_length, -half, drawn.body_length, 2 * half), corner, corner)
    return path


def _shaft(drawn: Sizes, ends: int) -> QPainterPath:
    half = drawn.shaft_diameter / 2
    path = _box(0, -half, drawn.shaft_length, 2 * half)
    for _ in range(ends - 1):
        path.addRect(QRectF(-drawn.body_length - drawn.shaft_length, -half, drawn.shaft_length, 2 * half))
    return path


def _both_sides(left: float, width: float, drawn: Sizes, height: float) -> QPainterPath:
    half = drawn.body_diameter / 2
    path = _box(left, -half - height, width, height)
    path.addRect(QRectF(left, half, width, height))
    return path


def _band(drawn: Sizes) -> QPainterPath:
    middle = -drawn.body_length / 2
    path = _both_sides(middle - 0.5, 1.0, drawn, 0.12)
    path.addRect(QRectF(middle - 0.2, -drawn.body_diameter / 2 - 0.7, 0.4, 0.58))
    return path


def _studs(drawn: Sizes) -> QPainterPath:
    path, at = QPainterPath(), drawn.body_diameter * 0.38
    for y in (-at, at):
        path.addRect(QRectF(-drawn.body_length - 1.0, y - 0.09, 1.0, 0.18))
        path.addRect(QRectF(0, y - 0.09, 0.6, 0.18))
    return path


def _lugs(drawn: Sizes) -> QPainterPath:
    return _both_sides(-drawn.body_length / 2 - 0.4, 0.8, drawn, 0.8)


def _cradle(drawn: Sizes) -> QPainterPath:
    half, long = drawn.body_diameter / 2, drawn.body_length
    path = _box(-long - 0.35, half + 0.35, long + 0.7, 0.2)
    for left in (-long - 0.35, 0.15):
        path.addRect(QRectF(left, 0, 0.2, half + 0.35))
    return path


def _rigid_base(drawn: Sizes) -> QPainterPath:
    half, long = drawn.body_diameter / 2, drawn.body_length
    path = _box(-long * 0.9, half + 0.25, long * 0.8, 0.25)
    for left in (-long * 0.8, -long * 0.3):
        path.addRect(QRectF(left, half * 0.8, long * 0.1, half * 0.2 + 0.25))
    return path


def _face(drawn: Sizes) -> QPainterPath:
    reach = drawn.body_diameter / 2 + 0.3
    return _box(0, -reach, 0.3, 2 * reach)


def _yoke(drawn: Sizes) -> QPainterPath:
    half, long = drawn.body_diameter / 2, drawn.body_length
    path = _box(-long - 0.25, -half * 0.4, 0.25, half * 0.8)
    path.addRect(QRectF(-long - 1.1, -half * 0.9, 0.25, half * 1.8))
    path.addRect(QRectF(-long - 0.85, -0.15, 0.6, 0.3))
    return path


_MOUNTINGS = {
    "band": _band,
    "studs": _studs,
    "lugs": _lugs,
    "cradle": _cradle,
    "rigid_base": _rigid_base,
    "face": _face,
    "yoke": _yoke,
}


def clash(old: Outline, new: Outline, part: str) -> QPainterPath:
    """Return where two outlines differ in one part (`body`, `shaft`, `mounting`); all of it if nowhere."""
    one, other = getattr(old, part), getattr(new, part)
    differs: QPainterPath = other.subtracted(one).united(one.subtracted(other))
    return other.united(one) if differs.isEmpty() else differs


def flat_lines(motor: Motor) -> list[tuple[QPointF, QPointF]]:
    """Return the edge lines of the flats and of a keyway on the shaft of the side view, inches."""
    drawn = sizes(motor)
    half, start = drawn.shaft_diameter / 2, drawn.shaft_length * 0.35
    ys = [-half * 0.6, half * 0.6][: motor.shaft_flats or 0] + ([0.0] if motor.shaft_keyed else [])
    return [(QPointF(start, y), QPointF(drawn.shaft_length, y)) for y in ys]
