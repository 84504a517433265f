"""The look: a grid that goes with the text, one font in two sizes and a bold, light and dark colours.

Colour is for the verdict and the focus alone. Contrast follows WCAG 2.1, success criterion 1.4.3:
at least 4.5:1 between any ink and any ground that it is used on, in both sets.
"""

from typing import NamedTuple

from PySide6.QtCore import Qt
from PySide6.QtGui import QColor, QFont, QFontInfo, QGuiApplication, QPalette

BASE_PT = 10.0
"""The smallest size of the text; a system that is set to a larger one gets it."""
LARGE = 1.5
"""The large size, in sizes of the text."""
STEP = 8


def text_pt() -> float:
    """Return the size of the text in points: the system's, and never below `BASE_PT`."""
    has_application = QGuiApplication.instance() is not None
    return max(BASE_PT, QFontInfo(QGuiApplication.font()).pointSizeF() if has_application else 0.0)


GRID = round(STEP * text_pt() / BASE_PT)
"""Every gap and size is a multiple of this, in device-independent pixels.

It grows with the text of the application that stands when this module is loaded, so that what is laid out
for `BASE_PT` holds larger words as well.
"""


class Colours(NamedTuple):
    """One set of colours as `#rrggbb`; every ink stays readable on `ground`, `sheet` and `lit`."""

    ground: str
    sheet: str
    lit: str
    line: str
    ink: str
    soft: str
    focus: str
    fits: str
    fits_with_work: str
    poor: str
    ask: str
    wont_fit: str

    def verdict(self, verdict: str | None) -> QColor:
        """Return the ink of a verdict; what isn't a motor is drawn in soft ink."""
        return QColor(getattr(self, verdict or "soft", self.soft))


LIGHT = Colours(
    ground="#f4f3ef",
    sheet="#ffffff",
    lit="#fbe7a8",
    line="#bdb9ae",
    ink="#1d1f21",
    soft="#54585c",
    focus="#0b57a4",
    fits="#1b5e36",
    fits_with_work="#4c5b0c",
    poor="#7d4a08",
    ask="#5a3c94",
    wont_fit="#9b1c1c",
)
DARK = Colours(
    ground="#1b1d1f",
    sheet="#242729",
    lit="#4a4018",
    line="#54595d",
    ink="#eceae4",
    soft="#b9bcbe",
    focus="#8cc2ff",
    fits="#8ddba6",
    fits_with_work="#cfdc7c",
    poor="#f0bd78",
    ask="#cbb4ff",
    wont_fit="#ffa49b",
)

INKS = tuple(name for name in Colours._fields if name not in {"ground", "sheet", "lit", "line"})
GROUNDS = ("ground", "sheet", "lit")


def luminance(colour: str) -> float:
    """Return the relative luminance, 0 .. 1, of `#rrggbb` (WCAG 2.1, definition of relative luminance)."""
    channels = (int(colour[i : i + 2], 16) / 255 for i in (1, 3, 5))
    red, green, blue = (c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in channels)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    """Return the contrast ratio, 1 .. 21, of two `#rrggbb` colours (WCAG 2.1)."""
    low, high = sorted((luminance(one), luminance(other)))
    return (high + 0.05) / (low + 0.05)


def palette(colours: Colours) -> QPalette:
    """Return the Qt palette of a set of colours."""
    role = QPalette.ColorRole
    made = QPalette(QColor(colours.ground))
    inks = (role.WindowText, role.Text, role.ButtonText, role.ToolTipText, role.BrightText)
    for ink in inks:
        made.setColor(ink, QColor(colours.ink))
    for ground in (role.Window, role.Button, role.AlternateBase):
        made.setColor(ground, QColor(colours.ground))
    for sheet in (role.Base, role.ToolTipBase):
        made.setColor(sheet, QColor(colours.sheet))
    made.setColor(role.PlaceholderText, QColor(colours.soft))
    made.setColor(role.Highlight, QColor(colours.focus))
    made.setColor(role.HighlightedText, QColor(colours.sheet))
    made.setColor(role.Link, QColor(colours.focus))
    made.setColor(role.Mid, QColor(colours.line))
    made.setColor(role.Accent, QColor(colours.focus))
    for ink in inks[:3]:
        made.setColor(QPalette.ColorGroup.Disabled, ink, QColor(colours.soft))
    return made


def current_colours() -> Colours:
    """Return the set of colours that the application is drawn in."""
    return DARK if QGuiApplication.palette().color(QPalette.ColorRole.Window).lightness() < 128 else LIGHT


def system_colours() -> Colours:
    """Return the set that the system asks for; light where it does not say."""
    dark = QGuiApplication.styleHints().colorScheme() == Qt.ColorScheme.Dark
    return DARK if dark else LIGHT


def bold(font: QFont) -> QFont:
    """Return the bold of a font."""
    made = QFont(font)
    made.setBold(True)
    return made


def large(font: QFont) -> QFont:
    """Return the large size of a font."""
    made = QFont(font)
    made.setPointSizeF(LARGE * text_pt())
    return made


def sheet_rules(colours: Colours) -> str:
    """Return the few rules that flatten what the style draws in relief: lines before boxes."""
    line, sheet, ground, ink, focus, soft, lit = (
        colours.line,
        colours.sheet,
        colours.ground,
        colours.ink,
        colours.focus,
        colours.soft,
        colours.lit,
    )
    return f"""
    QLineEdit, QPlainTextEdit, QTextEdit {{ background: {sheet}; color: {ink}; border: 1px solid {line};
        border-radius: 2px; padding: 3px; placeholder-text-color: {soft}; }}
    QLineEdit:disabled, QPlainTextEdit:disabled, QTextEdit:disabled {{ background: {ground}; color: {soft}; }}
    QLineEdit:focus, QPlainTextEdit:focus, QTextEdit:focus {{ border: 2px solid {focus}; padding: 2px; }}
    QPushButton, QToolButton {{ background: {sheet}; color: {ink}; border: 1px solid {line};
        border-radius: 2px; padding: 4px 10px; }}
    QPushButton:focus, QToolButton:focus {{ border: 2px solid {focus}; padding: 3px 9px; }}
    QPushButton:disabled, QToolButton:disabled {{ color: {soft}; background: {ground}; }}
    QPushButton:pressed, QPushButton:checked, QToolButton:pressed, QToolButton:checked {{
        background: {ink}; color: {sheet}; }}
    QTableView, QListView, QScrollArea, QTreeView {{ border: none; background: {sheet};
        gridline-color: {line}; selection-background-color: {lit}; selection-color: {ink}; outline: none; }}
    QTableView:focus, QListView:focus {{ border: 1px solid {focus}; }}
    QHeaderView {{ background: {ground}; border: none; }}
    QHeaderView::section {{ background: {ground}; color: {soft}; border: none;
        border-bottom: 1px solid {line}; padding: 4px 8px; }}
    QTableCornerButton::section {{ background: {ground}; border: none; border-bottom: 1px solid {line}; }}
    QSplitter::handle {{ background: {line}; }}
    QToolTip {{ background: {sheet}; color: {ink}; border: 1px solid {line}; padding: 4px; }}
    """
