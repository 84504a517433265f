"""A motor seen from one of its ends, with the arrow of its turn.

The turn is painted in the view that it was said in; the other end is the same picture mirrored, as
it is on the motor itself. A turn whose view was not said gets no arrow but a question.
"""

import math

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPainterPath, QPolygonF

from matcher.motor import Motor
from ui.geometry import Sizes, sizes
from ui.pens import line_pen
from ui.theme import Colours, bold, large

CLOCKWISE = {"cw": (-1,), "ccw": (1,), "either": (-1, 1)}
"""Ways that the arrow points, as signs of Qt's counter-clockwise angles."""


def ways(motor: Motor, end: str) -> tuple[int, ...]:
    """Return the signs of the turn's arrows seen from an end; empty when that can't be told."""
    said = CLOCKWISE.get(motor.turn or "", ())
    if len(said) == 1 and motor.seen_from is None:
        return ()
    mirrored = motor.seen_from not in (None, end)
    return tuple(-way if mirrored else way for way in said)


def paint_end(
    painter: QPainter, middle: QPointF, scale: float, motor: Motor, end: str, colours: Colours
) -> None:
    """Paint one end view; `scale` is pixels an inch, `end` is `lead_end` or `shaft_end`."""
    drawn = sizes(motor)
    painter.save()
    painter.translate(middle)
    painter.scale(scale, scale)
    painter.setPen(line_pen(colours.ink, 1.5, known=motor.body_diameter_in is not None))
    painter.setBrush(QColor(colours.sheet))
    painter.drawEllipse(QPointF(0, 0), drawn.body_diameter / 2, drawn.body_diameter / 2)
    if end == "shaft_end" or (motor.shaft_ends or 1) > 1:
        _paint_shaft(painter, motor, drawn, colours)
    else:
        _paint_leads(painter, drawn, colours)
    for kind in motor.mounting or ():
        _paint_mounting(painter, kind, motor, drawn, colours)
    _paint_turn(painter, ways(motor, end), drawn, colours)
    painter.restore()


def _paint_shaft(painter: QPainter, motor: Motor, drawn: Sizes, colours: Colours) -> None:
    half = max(drawn.shaft_diameter / 2, 0.2)
    box = QRectF(-half, -half, 2 * half, 2 * half)
    painter.setPen(line_pen(colours.ink, 1.5, known=motor.shaft_diameter_in is not None))
    painter.setBrush(QColor(colours.ground))
    cut = 35 if (motor.shaft_flats or 0) else -90
    painter.drawChord(box, (180 - cut) * 16, (180 + 2 * cut) * 16)
    if (motor.shaft_flats or 0) > 1:
        painter.drawLine(QPointF(-half * 0.8, half * 0.57), QPointF(half * 0.8, half * 0.57))
    if motor.shaft_keyed:
        painter.fillRect(QRectF(-half * 0.25, -half, half * 0.5, half * 0.5), QColor(colours.ink))


def _paint_leads(painter: QPainter, drawn: Sizes, colours: Colours) -> None:
    painter.setPen(line_pen(colours.ink, 1.5))
    reach = drawn.body_diameter / 2
    for x in (-0.3, 0.0, 0.3):
        painter.drawLine(QPointF(x, reach * 0.55), QPointF(x * 1.6, reach * 1.15))


def _paint_mounting(painter: QPainter, kind: str, motor: Motor, drawn: Sizes, colours: Colours) -> None:
    painter.setPen(line_pen(colours.ink, 1.5))
    painter.setBrush(QColor(colours.sheet))
    half = drawn.body_diameter / 2
    for angle in _SPOTS.get(kind, ()):
        painter.save()
        painter.rotate(angle)
        painter.drawPath(_shape(kind, motor, half))
        painter.restore()


def _shape(kind: str, motor: Motor, half: float) -> QPainterPath:
    path = QPainterPath()
    if kind in {"studs", "face"}:
        path.addEllipse(QPointF((motor.bolt_circle_in or half * 1.5) / 2, 0), 0.14, 0.14)
    else:
        path.addRect(_BOXES[kind](half))
    return path


_SPOTS: dict[str, tuple[int, ...]] = {
    "studs": (45, 135, 225, 315),
    "face": (45, 135, 225, 315),
    "lugs": (-90, 30, 150),
    "band": (-90,),
    "cradle": (90,),
    "rigid_base": (90,),
    "yoke": (90,),
}
_BOXES = {
    "lugs": lambda half: QRectF(half, -0.3, 0.7, 0.6),
    "band": lambda half: QRectF(half, -0.35, 0.6, 0.7),
    "cradle": lambda half: QRectF(half + 0.3, -half * 0.8, 0.2, half * 1.6),
    "rigid_base": lambda half: QRectF(half + 0.1, -half * 0.8, 0.3, half * 1.6),
    "yoke": lambda half: QRectF(half, -half * 0.3, 0.9, half * 0.6),
}


def _paint_turn(painter: QPainter, signs: tuple[int, ...], drawn: Sizes, colours: Colours) -> None:
    radius = drawn.body_diameter * 0.34
    for place, sign in enumerate(signs):
        _paint_arrow(painter, radius - place * drawn.body_diameter * 0.09, sign, drawn, colours)
    if not signs:
        _paint_question(painter, radius, colours)


def _paint_arrow(painter: QPainter, radius: float, sign: int, drawn: Sizes, colours: Colours) -> None:
    start, sweep = (225, -240) if sign < 0 else (-45, 240)
    pen = line_pen(colours.focus, 3)
    painter.setPen(pen)
    painter.drawArc(QRectF(-radius, -radius, 2 * radius, 2 * radius), start * 16, sweep * 16)
    angle, size = math.radians(start + sweep), drawn.body_diameter * 0.06
    tip = QPointF(radius * math.cos(angle), -radius * math.sin(angle))
    along = QPointF(-math.sin(angle), -math.cos(angle)) * sign
    across = QPointF(math.cos(angle), -math.sin(angle))
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(QColor(colours.focus))
    painter.drawPolygon(QPolygonF([tip + along * (1.8 * size), tip + across * size, tip - across * size]))


def _paint_question(painter: QPainter, radius: float, colours: Colours) -> None:
    painter.setPen(line_pen(colours.soft, 2, known=False))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    box = QRectF(-radius, -radius, 2 * radius, 2 * radius)
    for start in (210, 20):
        painter.drawArc(box, start * 16, -50 * 16)
    middle = painter.transform().map(QPointF(0, -radius))
    painter.save()
    painter.resetTransform()
    painter.setPen(QColor(colours.ink))
    painter.setFont(large(bold(painter.font())))
    painter.drawText(QRectF(middle.x() - 24, middle.y() - 16, 48, 32), Qt.AlignmentFlag.AlignCenter, "?")
    painter.restore()
