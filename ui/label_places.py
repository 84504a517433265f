"""Finds room for words on a picture: inside its field, and no two on each other."""

from collections.abc import Iterable, Sequence

from PySide6.QtCore import QPointF, QRectF, QSizeF

GAP = 12
"""Pixels between a spot's middle and its words."""


def around(at: QPointF, size: QSizeF) -> list[QRectF]:
    """Return the boxes of a size beside a spot: right, left, above, below, then aslant."""
    wide, high = size.width(), size.height()
    right, left, middle = at.x() + GAP, at.x() - GAP - wide, at.x() - wide / 2
    above, below, level = at.y() - GAP - high, at.y() + GAP, at.y() - high / 2
    corners = (
        *((right, level), (left, level), (middle, above), (middle, below)),
        *((right, above), (left, above), (right, below), (left, below)),
    )
    return [QRectF(QPointF(*corner), size) for corner in corners]


class LabelPlaces:
    """The boxes that are taken on a picture."""

    def __init__(self, field: QRectF) -> None:
        self._field = field
        self._taken: list[QRectF] = []

    def keep_clear(self, box: QRectF) -> None:
        """Let no words stand on a box."""
        self._taken.append(box)

    def take(self, wished: Sequence[QRectF], lines: Iterable[QPointF] = ()) -> QRectF:
        """Take the first wished box that is free, crossed by as few points of `lines` as can be.

        Boxes are moved inside the field; where none of the wished ones is free, one down the field is.
        """
        points = list(lines)

        def cost(box: QRectF) -> tuple[float, int]:
            return self._covered(box), sum(map(box.contains, points))

        best = min(map(self._inside, wished), key=cost)
        if self._covered(best):
            best = min([best, *map(self._inside, self._rows(best))], key=cost)
        self._taken.append(best)
        return best

    def _inside(self, box: QRectF) -> QRectF:
        x = max(self._field.left(), min(box.left(), self._field.right() - box.width()))
        y = max(self._field.top(), min(box.top(), self._field.bottom() - box.height()))
        return QRectF(QPointF(x, y), box.size())

    def _rows(self, box: QRectF) -> list[QRectF]:
        """Return boxes of the same size all over the field, half a line apart, at the right first."""
        step = max(1.0, box.height() / 2)
        tops = [self._field.top() + n * step for n in range(int(self._field.height() / step))]
        lefts = (self._field.right() - box.width(), box.left(), self._field.left())
        return [QRectF(QPointF(left, top), box.size()) for top in tops for left in lefts]

    def _covered(self, box: QRectF) -> float:
        """Return how many square pixels of a box are taken."""
        shared = (box.intersected(taken) for taken in self._taken)
        return sum(one.width() * one.height() for one in shared if not one.isEmpty())
