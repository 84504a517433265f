"""Fan and system curve with the point where they meet, and the points of other speeds."""

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen, QPolygonF
from PySide6.QtWidgets import QSizePolicy, QWidget

from matcher.airflow.chart import Chart, Curve, Spot
from matcher.airflow.curve import Point
from ui.theme import GRID, Colours, bold, current_colours

LEFT, BOTTOM, TOP, RIGHT = 7 * GRID, 5 * GRID, 2 * GRID, 2 * GRID
STEPS = (1, 2, 2.5, 5, 10)


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
        self._paint_names(painter, field, colours)
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

    def _paint_names(self, painter: QPainter, field: QRectF, colours: Colours) -> None:
        """Name each curve where it leaves the left or the top, clear of the spots."""
        if self._chart is None:
            return
        painter.setPen(QColor(colours.soft))
        for place, curve in enumerate(self._chart.curves):
            wide = self.fontMetrics().horizontalAdvance(curve.label)
            if not place:
                inside = [point for point in curve.points if point[1] <= self._chart.most_in_wc] or [
                    (0.0, 0.0)
                ]
                at = self._at(field, inside[-1])
                box = QPointF(
                    min(at.x(), field.right() - GRID) - wide - GRID, max(at.y(), field.top()) + 2 * GRID
                )
            else:
                at = self._at(field, curve.points[0])
                box = QPointF(at.x() + GRID, at.y() - 4)
            painter.drawText(box, curve.label)

    def _paint_spot(self, painter: QPainter, field: QRectF, spot: Spot, colours: Colours) -> None:
        at = self._at(field, spot.point)
        painter.setPen(QPen(QColor(colours.focus), 2))
        painter.setBrush(QColor(colours.focus if spot.is_measured else colours.sheet))
        painter.drawEllipse(at, 5, 5)
        painter.setFont(bold(self.font()) if spot.is_measured else self.font())
        metrics = painter.fontMetrics()
        wide, high = metrics.horizontalAdvance(spot.label), metrics.height()
        left = at.x() + 12 if at.x() + 12 + wide < field.right() else at.x() - 12 - wide
        room = QRectF(left - 3, at.y() - high / 2, wide + 6, high)
        painter.fillRect(room, QColor(colours.sheet))
        painter.setPen(QColor(colours.ink))
        painter.drawText(room, Qt.AlignmentFlag.AlignCenter, spot.label)
        painter.setFont(self.font())
