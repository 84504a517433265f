"""Pens for drawings in inches: their width stays in pixels, however the painter is scaled."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QColor, QPen


def line_pen(colour: str, width: float, *, known: bool = True) -> QPen:
    """Return a pen of a width in pixels; what isn't known is dashed."""
    pen = QPen(QColor(colour), width, Qt.PenStyle.SolidLine if known else Qt.PenStyle.DashLine)
    pen.setCosmetic(True)
    return pen
