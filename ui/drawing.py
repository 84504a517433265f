"""The drawing of a motor: side view to scale and both ends, with the turn as an arrow in each.

With a candidate, the old motor's outline lies over it in a dashed line; what the engine's findings
say does not fit is hatched and named.
"""

from collections.abc import Callable
from dataclasses import dataclass, field

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QBrush, QColor, QPainter, QPainterPath, QPaintEvent, QTransform
from PySide6.QtWidgets import QSizePolicy, QWidget

from matcher.motor import Motor
from ui.drawing_layout import Layout
from ui.end_view import paint_end
from ui.geometry import Outline, clash, flat_lines
from ui.pens import line_pen
from ui.theme import GRID, Colours, current_colours

PARTS = {"shaft": "shaft", "length": "body", "mounting": "mounting"}
"""Which part of the outline a check's finding is about; the others have no place in the drawing."""

Say = Callable[[str, Motor], str]
"""Gives a field of a motor as people say it, empty when not known."""


@dataclass(frozen=True)
class Scene:
    """What is drawn: a motor, maybe an old one over it, and the names of what clashes by check."""

    motor: Motor = field(default_factory=Motor)
    over: Motor | None = None
    clashes: dict[str, str] = field(default_factory=dict)


class Drawing(QWidget):
    """Paints a scene to scale, as large as its room allows."""

    def __init__(self, say: Say, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._say = say
        self._scene = Scene()
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setMinimumSize(34 * GRID, 18 * GRID)
        self.setAccessibleName(self.tr("Drawing of the motor"))

    def show_scene(self, scene: Scene) -> None:
        """Draw another scene."""
        self._scene = scene
        self.setAccessibleDescription(self._words())
        self.update()

    def sizeHint(self) -> QSize:
        """Return a size that leaves the labels room."""
        return QSize(64 * GRID, 36 * GRID)

    def _words(self) -> str:
        names = (
            "body_diameter_in",
            "body_length_in",
            "shaft_diameter_in",
            "shaft_length_in",
            "turn",
            "seen_from",
        )
        said = [self._say(name, self._scene.motor) for name in names]
        return ", ".join([word for word in said if word] + list(self._scene.clashes.values()))

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint side view, end views and labels."""
        painter, colours = QPainter(self), current_colours()
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        layout = self.layout_in(QRectF(self.rect()))
        self._paint_side(painter, layout, colours)
        self._paint_ends(painter, layout, colours)
        self._paint_names(painter, layout, colours)

    def layout_in(self, room: QRectF) -> Layout:
        """Return where everything goes in a room of that size."""
        labels = self._labels(room.width()).values()
        widest = max(self.fontMetrics().horizontalAdvance(words) for words in labels)
        motor, over = self._scene.motor, self._scene.over
        layout = Layout(motor, over, room, self.fontMetrics().height(), widest + 2 * GRID)
        layout.place(len(self._scene.clashes))
        return layout

    def _labels(self, width: float) -> dict[str, str]:
        """Return what stands below the end views, short where two long ones have no room side by side."""
        lead, shaft = self.tr("seen from the lead end"), self.tr("seen from the shaft end")
        if 2 * (self.fontMetrics().horizontalAdvance(shaft) + 2 * GRID) > width:
            lead, shaft = self.tr("lead end"), self.tr("shaft end")
        return {"lead_end": lead, "shaft_end": shaft}

    def _paint_side(self, painter: QPainter, layout: Layout, colours: Colours) -> None:
        new, old = layout.new, layout.old
        place = QTransform().translate(layout.origin.x(), layout.origin.y()).scale(layout.scale, layout.scale)
        painter.setTransform(place)
        for path, sizes in ((new.shaft, _SHAFT), (new.mounting, set()), (new.body, _BODY)):
            painter.setPen(line_pen(colours.ink, 1.5, known=not sizes & new.unknown))
            painter.setBrush(QColor(colours.sheet))
            painter.drawPath(path)
        painter.setPen(line_pen(colours.ink, 1))
        for start, stop in flat_lines(self._scene.motor):
            painter.drawLine(start, stop)
        _paint_leads(painter, new, colours)
        if old is not None:
            self._paint_over(painter, new, old, colours)
        painter.resetTransform()
        _paint_sizes(painter, layout, self._sizes_said(), colours)

    def _paint_over(self, painter: QPainter, new: Outline, old: Outline, colours: Colours) -> None:
        for check in self._scene.clashes:
            if check in PARTS:
                _hatch(painter, clash(old, new, PARTS[check]), colours)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.setPen(line_pen(colours.focus, 1.5, known=False))
        painter.drawPath(old.whole)

    def _sizes_said(self) -> dict[str, str]:
        names = ("body_diameter_in", "body_length_in", "shaft_diameter_in", "shaft_length_in")
        motor = self._scene.motor
        return {name: self._say(name, motor) or self.tr("not known") for name in names}

    def _paint_ends(self, painter: QPainter, layout: Layout, colours: Colours) -> None:
        labels = self._labels(layout.room.width())
        for end, middle in layout.ends.items():
            paint_end(painter, middle, layout.scale, self._scene.motor, end, colours)
            painter.setPen(QColor(colours.ink))
            box = QRectF(middle.x() - 12 * GRID, layout.end_label, 24 * GRID, layout.line)
            painter.drawText(box, Qt.AlignmentFlag.AlignCenter, labels[end])

    def _paint_names(self, painter: QPainter, layout: Layout, colours: Colours) -> None:
        painter.setPen(QColor(colours.wont_fit))
        lines = list(self._scene.clashes.values())
        for place, words in enumerate(lines):
            y = layout.room.top() + place * layout.line
            box = QRectF(layout.room.left(), y, layout.room.width(), layout.line)
            short = painter.fontMetrics().elidedText(words, Qt.TextElideMode.ElideRight, int(box.width()))
            painter.drawText(box, Qt.AlignmentFlag.AlignLeft, short)
        if self._scene.over is not None:
            painter.setPen(QColor(colours.focus))
            box = QRectF(
                layout.room.left(), layout.room.bottom() - layout.line, layout.room.width(), layout.line
            )
            painter.drawText(box, Qt.AlignmentFlag.AlignLeft, self.tr("dashed: the old motor"))


_WHOLE = Qt.AlignmentFlag.AlignCenter | Qt.TextFlag.TextWordWrap | Qt.TextFlag.TextDontClip
"""Words in the middle of a body: on two lines where it is small, and never cut."""
_BODY = {"body_diameter_in", "body_length_in"}
_SHAFT = {"shaft_diameter_in", "shaft_length_in"}


def _hatch(painter: QPainter, path: QPainterPath, colours: Colours) -> None:
    brush = QBrush(QColor(colours.wont_fit), Qt.BrushStyle.BDiagPattern)
    inverse, _ok = painter.transform().inverted()
    brush.setTransform(QTransform(inverse.m11(), 0, 0, inverse.m22(), 0, 0))
    painter.fillPath(path, brush)


def _paint_leads(painter: QPainter, new: Outline, colours: Colours) -> None:
    painter.setPen(line_pen(colours.ink, 1.5))
    left, half = -new.sizes.body_length, new.sizes.body_diameter / 2
    for drop in (0.0, 0.18, 0.36):
        wire = QPainterPath(QPointF(left, half * 0.5 + drop))
        wire.quadTo(QPointF(left - 0.5, half * 0.5 + drop), QPointF(left - 0.7, half * 0.8 + drop))
        painter.drawPath(wire)


def _paint_sizes(painter: QPainter, layout: Layout, said: dict[str, str], colours: Colours) -> None:
    """Write body length and shaft length below the view, the two diameters inside the outline."""
    sizes, origin, scale = layout.new.sizes, layout.origin, layout.scale
    y = layout.size_line
    spans = (
        (-sizes.body_length * scale, 0.0, said["body_length_in"]),
        (0.0, sizes.shaft_length * scale, said["shaft_length_in"]),
    )
    painter.setPen(QColor(colours.soft))
    for start, stop, words in spans:
        left, right = origin.x() + start + 2, origin.x() + stop - 2
        painter.drawLine(QPointF(left, y), QPointF(right, y))
        for x in (left, right):
            painter.drawLine(QPointF(x, y - 4), QPointF(x, y + 4))
        box = QRectF((left + right) / 2 - 80, y + 2, 160, layout.line)
        painter.drawText(box, Qt.AlignmentFlag.AlignCenter, words)
    painter.setPen(QColor(colours.ink))
    wide = sizes.body_length * scale
    across = QRectF(origin.x() - wide, origin.y() - 1.5 * layout.line, wide, 3 * layout.line)
    painter.drawText(across, _WHOLE, f"⌀ {said['body_diameter_in']}")
    shaft_top = origin.y() - sizes.shaft_diameter * scale / 2 - layout.line - 2
    box = QRectF(origin.x() + 6, shaft_top, max(sizes.shaft_length * scale, 140), layout.line)
    left = Qt.AlignmentFlag.AlignLeft | Qt.TextFlag.TextDontClip
    painter.drawText(box, left, f"⌀ {said['shaft_diameter_in']}")
