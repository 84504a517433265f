"""Fan and system curve with the point where they meet, and the points of other speeds."""

from itertools import pairwise

from PySide6.QtCore import QPointF, QRectF, QSize, QSizeF, Qt
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QPainter, QPaintEvent, QPen, QPolygonF
from PySide6.QtWidgets import QSizePolicy, QWidget

from matcher.airflow.chart import Chart, Curve, Spot
from matcher.airflow.curve import Point
from ui.label_places import LabelPlaces, around
from ui.theme import GRID, Colours, bold, current_colours

LEFT, BOTTOM, TOP, RIGHT = 7 * GRID, 5 * GRID, 2 * GRID, 2 * GRID
STEPS = (1, 2, 2.5, 5, 10)
BETWEEN = 6
"""Dots on each stretch of a curve that words keep clear of."""


def nice_step(most: float, wanted: int) -> float:
    """Return a step of 1, 2, 2.5 or 5 times a power of ten that cuts 0 .. most into about `wanted` parts."""
    rough = most / wanted
    power = 10.0 ** len(str(int(rough))) / 10 if rough >= 1 else 1.0
    while power > rough:
        power /= 10
    return next((step * power for step in STEPS if step * power >= rough), 10 * power)


class CurvePicture(QWidget):
    """Painted from a `Chart`; nothing is worked out here but places on the screen."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._chart: Chart | None = None
        self.setMinimumHeight(26 * GRID)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)

    def show_chart(self, chart: Chart | None) -> None:
        """Show another chart; hidden while there is none."""
        self._chart = chart
        self.setVisible(chart is not None)
        if chart is not None:
            words = "; ".join(spot.label for spot in chart.spots)
            self.setAccessibleName(self.tr("Fan and system curve: {}").format(words))
            self.setToolTip("\n".join(chart.notes))
        self.update()

    def sizeHint(self) -> QSize:
        """Return a picture half as high as wide."""
        return QSize(64 * GRID, 34 * GRID)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint axes, curves and spots."""
        if self._chart is None:
            return
        painter, colours = QPainter(self), current_colours()
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        field = QRectF(self.rect()).adjusted(LEFT, TOP, -RIGHT, -BOTTOM)
        painter.fillRect(field, QColor(colours.sheet))
        self._paint_axes(painter, field, colours)
        painter.save()
        painter.setClipRect(field)
        for place, curve in enumerate(self._chart.curves):
            self._paint_curve(painter, field, curve, colours, is_system=not place)
        painter.restore()
        self._paint_labels(painter, field, colours)
        for spot in self._chart.spots:
            self._paint_spot(painter, field, spot, colours)

    def _at(self, field: QRectF, point: Point) -> QPointF:
        chart = self._chart
        most_cfm, most_in_wc = (chart.most_cfm, chart.most_in_wc) if chart else (1.0, 1.0)
        across = field.left() + point[0] / most_cfm * field.width()
        return QPointF(across, field.bottom() - point[1] / most_in_wc * field.height())

    def _paint_axes(self, painter: QPainter, field: QRectF, colours: Colours) -> None:
        chart = self._chart
        if chart is None:
            return
        painter.setFont(self.font())
        high = self.fontMetrics().height()
        step = nice_step(chart.most_cfm, 6)
        for mark in range(int(chart.most_cfm / step) + 1):
            at = self._at(field, (mark * step, 0)).x()
            painter.setPen(QPen(QColor(colours.line), 0.5))
            painter.drawLine(QPointF(at, field.top()), QPointF(at, field.bottom()))
            painter.setPen(QColor(colours.soft))
            box = QRectF(at - 40, field.bottom() + 4, 80, high)
            painter.drawText(box, Qt.AlignmentFlag.AlignHCenter, f"{mark * step:,.0f}")
        step = nice_step(chart.most_in_wc, 4)
        for mark in range(int(chart.most_in_wc / step) + 1):
            at = self._at(field, (0, mark * step)).y()
            painter.setPen(QPen(QColor(colours.line), 0.5))
            painter.drawLine(QPointF(field.left(), at), QPointF(field.right(), at))
            painter.setPen(QColor(colours.soft))
            box = QRectF(0, at - high / 2, LEFT - GRID, high)
            painter.drawText(box, Qt.AlignmentFlag.AlignRight, f"{mark * step:g}")
        painter.drawText(
            QRectF(field.left(), field.bottom() + 4 + high, field.width(), high),
            Qt.AlignmentFlag.AlignRight,
            self.tr("airflow, CFM"),
        )
        painter.drawText(QPointF(GRID, field.top() - 4), self.tr("static, in. w.c."))

    def _paint_curve(
        self, painter: QPainter, field: QRectF, curve: Curve, colours: Colours, *, is_system: bool
    ) -> None:
        pen = QPen(QColor(colours.soft if is_system else colours.ink), 1.5 if is_system else 2)
        if curve.is_sketch:
            pen.setStyle(Qt.PenStyle.DashLine)
        painter.setPen(pen)
        painter.drawPolyline(QPolygonF([self._at(field, point) for point in curve.points]))

    def placed(self, field: QRectF) -> dict[str, QRectF]:
        """Return where each label stands in a field: the spots' words first, then the curves' names."""
        if self._chart is None:
            return {}
        places, boxes = LabelPlaces(field), {}
        curves = {curve.label: self._dots(field, curve) for curve in self._chart.curves}
        lines = [dot for dots in curves.values() for dot in dots]
        for spot in self._chart.spots:
            places.keep_clear(QRectF(self._at(field, spot.point) - QPointF(6, 6), QSizeF(12, 12)))
        for spot in self._chart.spots:
            size = self._size(field, spot.label, bold(self.font()) if spot.is_measured else self.font())
            boxes[spot.label] = places.take(around(self._at(field, spot.point), size), lines)
        for label, dots in curves.items():
            size = self._size(field, label, self.font())
            wished = [box for dot in self._name_places(dots, label) for box in around(dot, size)]
            boxes[label] = places.take(wished, lines)
        return boxes

    def _name_places(self, dots: list[QPointF], label: str) -> list[QPointF]:
        """Return the points of a curve to name it at: the system's from its top, a fan's from its start."""
        is_system = self._chart is not None and label == self._chart.curves[0].label
        return (dots[::-1] if is_system else dots)[:: max(1, len(dots) // 8)]

    def _size(self, field: QRectF, words: str, font: QFont) -> QSizeF:
        """Return the room of words, broken where the field is too narrow for one line."""
        most = QRectF(0, 0, max(1.0, field.width() - 6), field.height())
        return QFontMetricsF(font).boundingRect(most, _BROKEN, words).size() + QSizeF(6, 0)

    def _dots(self, field: QRectF, curve: Curve) -> list[QPointF]:
        """Return points all along a curve, as far as it lies in the field."""
        corners = [self._at(field, point) for point in curve.points]
        dots = [a + (b - a) * (n / BETWEEN) for a, b in pairwise(corners) for n in range(BETWEEN)]
        return [dot for dot in dots if field.contains(dot)] or corners[:1]

    def _paint_labels(self, painter: QPainter, field: QRectF, colours: Colours) -> None:
        boxes = self.placed(field)
        spots = {spot.label: spot for spot in self._chart.spots} if self._chart else {}
        for label, box in boxes.items():
            spot = spots.get(label)
            painter.setFont(bold(self.font()) if spot and spot.is_measured else self.font())
            painter.fillRect(box, QColor(colours.sheet))
            painter.setPen(QColor(colours.ink if spot else colours.soft))
            painter.drawText(box, _BROKEN, label)
        painter.setFont(self.font())

    def _paint_spot(self, painter: QPainter, field: QRectF, spot: Spot, colours: Colours) -> None:
        painter.setPen(QPen(QColor(colours.focus), 2))
        painter.setBrush(QColor(colours.focus if spot.is_measured else colours.sheet))
        painter.drawEllipse(self._at(field, spot.point), 5, 5)


_BROKEN = Qt.AlignmentFlag.AlignCenter | Qt.TextFlag.TextWordWrap
