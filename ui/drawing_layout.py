"""Where the three views of a drawing go: the ends beside the side view, or below it, whichever is larger."""

from PySide6.QtCore import QPointF, QRectF

from matcher.motor import Motor
from ui.geometry import outline
from ui.theme import GRID

LEADS = 0.59
"""How far the leads hang below the middle of an end view, as a share of the body's diameter."""
LEAST_SCALE = 2.0
_BESIDE = 5 * GRID
"""What stands left of the side view, between it and the ends, and at the right of them, when side by side."""


class Layout:
    """The scale (pixels an inch) that lets everything fit, and the places; `label` is the widest label."""

    def __init__(self, motor: Motor, over: Motor | None, room: QRectF, line: float, label: float) -> None:
        self.room, self.line, self.label = room, line, label
        self.new = outline(motor)
        self.old = outline(over) if over else None
        whole = self.new.whole.boundingRect()
        if self.old is not None:
            whole = whole.united(self.old.whole.boundingRect())
        self.whole = whole.united(QRectF(whole.left() - 0.8, 0, 0.1, 0.1))
        self._across = max(abs(self.whole.top()), abs(self.whole.bottom())) * 2
        self._drop = max(self._across / 2, self.new.sizes.body_diameter * LEADS)

    def place(self, names: int) -> None:
        """Find the places below as many lines of `names`."""
        self._top = self.room.top() + (names + 1) * self.line
        below, beside = self._scale_below(), self._scale_beside()
        self.scale = max(below, beside, LEAST_SCALE)
        self._half = self._across * self.scale / 2
        if below >= beside:
            self._place_below()
        else:
            self._place_beside()
        self.end_label = next(iter(self.ends.values())).y() + self._drop * self.scale + 0.3 * self.line

    def _scale_below(self) -> float:
        """Return the scale with the ends in a row below: four halves and the lines between must fit."""
        high = self.room.bottom() - self._top - 3.6 * self.line
        wide = self.room.width() - 4 * GRID
        return min(high / (1.5 * self._across + self._drop), wide / max(self.whole.width(), 2 * self._across))

    def _scale_beside(self) -> float:
        """Return the scale with all three in a row, each end at least as wide as its label."""
        wide = self.room.width() - _BESIDE
        body, across, gap = self.whole.width(), self._across, 3 * GRID
        return min(
            (self.room.bottom() - self._top - 3.2 * self.line) / across,
            (wide - 2 * self.label) / body,
            (wide - gap - self.label / 2) / (body + 1.5 * across),
            (wide - gap) / (body + 2 * across),
        )

    def _place_below(self) -> None:
        side = self.room.left() + (self.room.width() - self.whole.width() * self.scale) / 2
        self._place_side(side)
        step = max(self._half + 2 * GRID, self.label / 2)
        middle = self.room.center().x()
        self._place_ends(middle - step, middle + step, self.size_line + 2 * self.line + self._half)

    def _place_beside(self) -> None:
        self._place_side(self.room.left() + 2 * GRID)
        step = max(2 * self._half + 2 * GRID, self.label)
        least = self.origin.x() + self.whole.right() * self.scale + 2 * GRID + step / 2
        most = self.room.right() - GRID - max(self._half, self.label / 2) - step
        first = max(least, min(most, self.room.center().x()))
        self._place_ends(first, first + step, self._top + self._half)

    def _place_side(self, left: float) -> None:
        self.origin = QPointF(left - self.whole.left() * self.scale, self._top + self._half)
        self.size_line = self._top + 2 * self._half + 0.3 * self.line

    def _place_ends(self, first: float, second: float, y: float) -> None:
        self.ends = {"lead_end": QPointF(first, y), "shaft_end": QPointF(second, y)}
