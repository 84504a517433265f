"""A small sketch of where a fact is found: the spot on the motor, or the line on the plate, in focus ink."""

from collections.abc import Callable

from PySide6.QtCore import QPointF, QRectF, QSize
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen, QTransform
from PySide6.QtWidgets import QSizePolicy, QWidget

from matcher.motor import Motor
from ui.end_view import paint_end
from ui.fields import fields, group
from ui.geometry import outline
from ui.pens import line_pen
from ui.theme import GRID, Colours, current_colours

SAMPLE = Motor(
    body_diameter_in=5.6,
    body_length_in=5.5,
    shaft_diameter_in=0.6,
    shaft_length_in=4.0,
    shaft_flats=1,
    mounting=("band",),
    bolt_circle_in=4.0,
)
_HALF = 2.8
SIDE: dict[str, tuple[tuple[float, float], tuple[float, float]]] = {
    "shaft_diameter_in": ((2.6, -1.2), (2.6, 1.2)),
    "shaft_length_in": ((0.0, -1.0), (4.0, -1.0)),
    "shaft_length_min_in": ((0.0, -1.0), (3.0, -1.0)),
    "shaft_flats": ((3.4, -1.3), (3.4, -0.2)),
    "shaft_keyed": ((3.4, -1.3), (3.4, -0.2)),
    "shaft_ends": ((4.0, 1.2), (4.0, 0.2)),
    "body_diameter_in": ((-1.2, -_HALF), (-1.2, _HALF)),
    "body_length_in": ((-5.5, -3.6), (0.0, -3.6)),
    "room_length_in": ((-6.8, -3.6), (0.0, -3.6)),
    "mounting": ((-2.75, -4.6), (-2.75, -3.3)),
    "lead_length_in": ((-6.2, 2.6), (-8.6, 2.6)),
    "leads": ((-8.2, 0.6), (-6.4, 1.6)),
    "plug_pins": ((-8.2, 0.6), (-6.4, 1.6)),
}
"""Where the measuring line of a field runs on the side view of the sample, inches."""
ENDS = {"turn": "lead_end", "seen_from": "lead_end", "bolt_circle_in": "shaft_end"}

_TURNING: dict[str, object] = {"turn": "ccw", "seen_from": "lead_end"}
_SHOWN: dict[str, dict[str, object]] = {
    "turn": _TURNING,
    "seen_from": _TURNING,
    "bolt_circle_in": {"mounting": ["studs"], "turn": "either"},
}


class Sketch(QWidget):
    """Shows one field's spot."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._field = ""
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)

    def sizeHint(self) -> QSize:
        """Return a small, fixed size."""
        return QSize(22 * GRID, 14 * GRID)

    def show_field(self, name: str) -> None:
        """Show where a field is found."""
        self._field = name
        known = fields().get(name)
        self.setAccessibleName(known.how if known else "")
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint side view, end view or plate."""
        painter, colours = QPainter(self), current_colours()
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        self._painter()(painter, colours)

    def _painter(self) -> Callable[[QPainter, Colours], None]:
        if self._field in SIDE:
            return self._paint_side
        if self._field in ENDS:
            return self._paint_end
        return self._paint_plate

    def _paint_side(self, painter: QPainter, colours: Colours) -> None:
        scale = self.width() / 14.0
        place = QTransform().translate(self.width() * 0.64, self.height() * 0.52).scale(scale, scale)
        painter.setTransform(place)
        drawn = outline(SAMPLE)
        painter.setPen(line_pen(colours.soft, 1))
        painter.setBrush(QColor(colours.sheet))
        for path in (drawn.shaft, drawn.mounting, drawn.body):
            painter.drawPath(path)
        for drop in (0.0, 0.2, 0.4):
            painter.drawLine(QPointF(-5.5, 1.8 + drop), QPointF(-6.3, 2.2 + drop))
        _measure(painter, *SIDE[self._field], colours)

    def _paint_end(self, painter: QPainter, colours: Colours) -> None:
        facts = SAMPLE.said() | _SHOWN[self._field]
        place, scale = QPointF(self.width() / 2, self.height() * 0.52), self.height() / 8.0
        paint_end(painter, place, scale, Motor.model_validate(facts), ENDS[self._field], colours)

    def _paint_plate(self, painter: QPainter, colours: Colours) -> None:
        room = QRectF(self.rect()).adjusted(GRID, GRID, -GRID, -GRID)
        painter.setPen(QPen(QColor(colours.soft), 1))
        painter.setBrush(QColor(colours.sheet))
        painter.drawRoundedRect(room, 4, 4)
        names = [one.name for one in group("plate")]
        at = names.index(self._field) if self._field in names else -1
        for place in range(min(len(names), 24)):
            column, row = place % 3, place // 3
            x = room.left() + GRID + column * (room.width() - GRID) / 3
            y = room.top() + GRID + row * (room.height() - GRID) / 8
            ink = colours.focus if place == at else colours.line
            painter.fillRect(QRectF(x, y, room.width() / 3 - 2 * GRID, 5 if place == at else 2), QColor(ink))


def _measure(
    painter: QPainter, start: tuple[float, float], stop: tuple[float, float], colours: Colours
) -> None:
    painter.setPen(line_pen(colours.focus, 2))
    painter.drawLine(QPointF(*start), QPointF(*stop))
    across = 0.3
    upright = start[0] == stop[0]
    for x, y in (start, stop):
        shift = QPointF(across, 0) if upright else QPointF(0, across)
        painter.drawLine(QPointF(x, y) - shift, QPointF(x, y) + shift)
