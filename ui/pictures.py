"""The pictures saved with a listing: a strip of small ones; choosing one shows it large.

A picture is hostile like any text from outside: it is decoded on a worker, with a limit on its size.
"""

from PySide6.QtCore import QBuffer, QByteArray, QIODevice, QSize, Qt, Signal
from PySide6.QtGui import QIcon, QImage, QImageReader, QPixmap
from PySide6.QtWidgets import QListView, QListWidget, QListWidgetItem, QWidget

from matcher.job import Attachment
from ui.desk import Desk
from ui.spans import shown
from ui.theme import GRID

SMALL = QSize(14 * GRID, 11 * GRID)
LARGEST_MB = 512
"""Memory that one decoded picture may take."""
DIGEST = Qt.ItemDataRole.UserRole


def decoded(content: bytes, room: QSize) -> QImage:
    """Decode a picture no larger than `room`, turned as its camera was held; null where that can't be."""
    buffer = QBuffer()
    buffer.setData(QByteArray(content))
    buffer.open(QIODevice.OpenModeFlag.ReadOnly)
    reader = QImageReader(buffer)
    reader.setAllocationLimit(LARGEST_MB)
    reader.setAutoTransform(True)
    size = reader.size()
    if size.isValid() and (size.width() > room.width() or size.height() > room.height()):
        reader.setScaledSize(size.scaled(room, Qt.AspectRatioMode.KeepAspectRatio))
    return reader.read()


class Pictures(QListWidget):
    """The strip; hidden while there is no picture."""

    chosen = Signal(str)
    """The digest of the picture to show large."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._shown: tuple[Attachment, ...] = ()
        self.setAccessibleName(self.tr("Pictures of the listing"))
        self.setViewMode(QListView.ViewMode.IconMode)
        self.setFlow(QListView.Flow.LeftToRight)
        self.setWrapping(False)
        self.setMovement(QListView.Movement.Static)
        self.setIconSize(SMALL)
        self.setFixedHeight(SMALL.height() + 5 * GRID)
        self.hide()
        self.itemActivated.connect(lambda item: self.chosen.emit(item.data(DIGEST)))
        self.itemClicked.connect(lambda item: self.chosen.emit(item.data(DIGEST)))

    def show_pictures(self, pictures: tuple[Attachment, ...]) -> None:
        """Show the pictures of another listing."""
        if pictures == self._shown:
            return
        self._shown = pictures
        self.clear()
        for picture in pictures:
            item = QListWidgetItem(shown(picture.name)[:24], self)
            item.setData(DIGEST, picture.digest)
            self._load(picture.digest)
        self.setVisible(bool(pictures))

    def _load(self, digest: str) -> None:
        task = self._desk.shelf.picture(digest)
        task.done.connect(lambda content: self._decode(digest, content))

    def _decode(self, digest: str, content: bytes) -> None:
        task = self._desk.work.run(decoded, content, SMALL * self.devicePixelRatioF())
        task.done.connect(lambda image: self._put(digest, image))

    def _put(self, digest: str, image: QImage) -> None:
        for row in range(self.count()):
            item = self.item(row)
            if item.data(DIGEST) == digest and not image.isNull():
                item.setIcon(QIcon(QPixmap.fromImage(image)))
            elif item.data(DIGEST) == digest:
                item.setText(self.tr("{}: no picture, or too large to show").format(item.text()))
