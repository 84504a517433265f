"""One picture as large as its room, in the place of the listing's text; a click or Escape puts it away."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QImage, QKeyEvent, QMouseEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget


class LargePicture(QWidget):
    """Paints an image to fit."""

    put_away = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._image = QImage()
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAccessibleName(self.tr("Picture of the listing; Escape returns to its words"))

    def show_image(self, image: QImage) -> None:
        """Show another picture."""
        self._image = image
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint the picture, or say that it can't be read."""
        painter = QPainter(self)
        words = self.tr("This picture can't be read.")
        if self._image.isNull():
            painter.drawText(self.rect(), Qt.AlignmentFlag.AlignCenter, words)
            return
        size = self._image.size().scaled(self.size(), Qt.AspectRatioMode.KeepAspectRatio)
        box = self.rect()
        box.setSize(size)
        box.moveCenter(self.rect().center())
        painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
        painter.drawImage(box, self._image)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Escape returns to the words."""
        if event.key() == Qt.Key.Key_Escape:
            self.put_away.emit()
        else:
            super().keyPressEvent(event)

    def mouseReleaseEvent(self, _event: QMouseEvent) -> None:
        """A click returns to the words."""
        self.put_away.emit()
