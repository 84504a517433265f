"""The head of a column: verdict mark with its word, name, range bar, landed cost, deciding sentence."""

from PySide6.QtCore import QRect, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QPainter
from PySide6.QtWidgets import QHeaderView, QWidget

from matcher.money.weigh import Weighed
from ui.marks import paint_mark
from ui.models.side import OLD, Side
from ui.money_words import per_cent, presumed_money
from ui.range_bar import paint_range, range_words
from ui.theme import GRID, Colours, bold, current_colours
from ui.wrapped import lines_of, paint_wrapped

HEAD_LINES = 4
"""Two lines of name, one of score, one of cost."""
LEAST_REASON, MOST_REASON = 3, 8
"""Lines for the deciding sentence."""


class CandidateHeader(QHeaderView):
    """Paints the heads over a `Side` model."""

    def __init__(self, side: Side, parent: QWidget | None = None) -> None:
        super().__init__(Qt.Orientation.Horizontal, parent)
        self._side = side
        self.reason_lines = LEAST_REASON
        self.setSectionsClickable(True)
        self.setHighlightSections(False)
        self.setDefaultSectionSize(24 * GRID)

    def sizeHint(self) -> QSize:
        """Return room for the mark, two lines of name, the bar, the cost and the longest reason."""
        return QSize(24 * GRID, self.height_for(self.reason_lines))

    def height_for(self, lines: int) -> int:
        """Return the height of a head with that many lines of reason."""
        return (HEAD_LINES + lines) * self.fontMetrics().height() + 8 * GRID

    def lines_for(self, width: int, height: int) -> int:
        """Return the lines that the longest reason takes in columns that wide, as the height allows."""
        room = (height - self.height_for(0)) // self.fontMetrics().height()
        most = max(LEAST_REASON, min(MOST_REASON, room))
        reasons = {self._reason(one) for one in self._side.candidates}
        wide = width - 2 * GRID
        return max([LEAST_REASON, *(lines_of(words, self.font(), wide, most) for words in reasons)])

    def show_lines(self, lines: int) -> None:
        """Take the height for that many lines of reason."""
        if lines != self.reason_lines:
            self.reason_lines = lines
            self.updateGeometry()
            self.geometriesChanged.emit()

    def paintSection(self, painter: QPainter, rect: QRect, section: int) -> None:
        """Paint one head."""
        colours = current_colours()
        painter.save()
        painter.fillRect(rect, QColor(colours.ground))
        painter.setPen(QColor(colours.line))
        painter.drawLine(rect.bottomLeft(), rect.bottomRight())
        painter.drawLine(rect.topRight(), rect.bottomRight())
        room = rect.adjusted(GRID, GRID // 2, -GRID, -GRID // 2)
        if section == OLD:
            self._paint_old(painter, room, colours)
        elif section - 1 < len(self._side.candidates):
            self._paint_candidate(painter, room, self._side.candidates[section - 1], colours)
        painter.restore()

    def _paint_old(self, painter: QPainter, room: QRect, colours: Colours) -> None:
        room = room.adjusted(2 * GRID, 0, 0, 0)  # over the values below, which leave room for a sign
        painter.setFont(bold(self.font()))
        painter.setPen(QColor(colours.ink))
        painter.drawText(room, Qt.AlignmentFlag.AlignTop, self.tr("Old motor"))
        painter.setFont(self.font())
        room = room.adjusted(0, 3 * GRID + 4, 0, 0)
        paint_wrapped(
            painter,
            room.adjusted(0, 0, 0, 3 * self.fontMetrics().height() - room.height()),
            self._side.old_name,
        )

    def _paint_candidate(self, painter: QPainter, room: QRect, one: Weighed, colours: Colours) -> None:
        judgement, line = one.judgement, self.fontMetrics().height()
        ink = colours.verdict(judgement.verdict)
        paint_mark(painter, QRectF(room.left(), room.top(), 3 * GRID, 3 * GRID), judgement.verdict, ink)
        painter.setFont(bold(self.font()))
        painter.setPen(ink)
        word = QRect(room.left() + 4 * GRID, room.top(), room.width() - 4 * GRID, 3 * GRID)
        painter.drawText(word, Qt.AlignmentFlag.AlignVCenter, self._side.verdict_of(one))
        painter.setFont(self.font())
        painter.setPen(QColor(colours.ink))
        y = room.top() + 3 * GRID + 4
        paint_wrapped(
            painter, QRect(room.left(), y, room.width(), 2 * line), self._side.names.get(one.id, "")
        )
        y += 2 * line + 2
        scores = (judgement.score_low, judgement.score, judgement.score_high)
        paint_range(painter, QRectF(room.left(), y, room.width(), 2 * GRID), scores, colours)
        y += 2 * GRID + 2
        painter.setPen(QColor(colours.soft))
        painter.drawText(
            QRect(room.left(), y, room.width(), line), Qt.AlignmentFlag.AlignLeft, range_words(*scores)
        )
        presumed = one.cost is not None and one.cost.shipping_presumed
        cost = presumed_money(one.landed_cost, one.offer.currency, presumed=presumed)
        cost = cost or self.tr("no price")
        painter.setPen(QColor(colours.ink))
        self._cost(painter, QRect(room.left(), y + line, room.width(), line), cost, self._chance(one))
        y += 2 * line + 2
        paint_wrapped(painter, QRect(room.left(), y, room.width(), room.bottom() - y), self._reason(one))

    def _reason(self, one: Weighed) -> str:
        """Return the deciding sentence, behind what the chance over it takes as given."""
        given = self.tr("Likely only {}.").format(one.proviso) if one.proviso else ""
        return f"{given} {one.judgement.reason}".lstrip()

    def _chance(self, one: Weighed) -> str:
        """Return how likely it works; what is no motor has no chance to be told."""
        if one.judgement.verdict is None:
            return ""
        return self.tr("{} likely").format(per_cent(one.fit_chance))

    def _cost(self, painter: QPainter, room: QRect, cost: str, chance: str) -> None:
        painter.setFont(bold(self.font()))
        painter.drawText(room, Qt.AlignmentFlag.AlignLeft, cost)
        painter.setFont(self.font())
        painter.drawText(room, Qt.AlignmentFlag.AlignRight, chance)
