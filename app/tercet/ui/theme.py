"""The look of the program: colours by role, fonts by role, lengths, and putting them on."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Protocol

from PySide6.QtCore import QObject, Qt, QTimer, Signal
from PySide6.QtGui import QColor, QFont, QFontDatabase, QPalette
from PySide6.QtWidgets import QApplication, QWidget

from tercet import resources
from tercet.ui.style import style_sheet

SANS = "Source Sans 3"
SERIF = "Source Serif 4"

#: Pixels at 100 %, weight, family and slant by role.
_FONTS: dict[str, tuple[int, int, str, bool]] = {
    "page_title": (24, 600, SERIF, False),
    "pane_title": (19, 600, SERIF, False),
    "block": (16, 600, SERIF, False),
    "big": (21, 600, SANS, False),
    "body": (14, 400, SANS, False),
    "body_bold": (14, 600, SANS, False),
    "body_italic": (14, 400, SANS, True),
    "small": (13, 400, SANS, False),
    "small_bold": (13, 600, SANS, False),
    "small_italic": (13, 400, SANS, True),
    "small_bold_italic": (13, 600, SANS, True),
}

_PALETTE_ROLES: tuple[tuple[QPalette.ColorRole, str], ...] = (
    (QPalette.ColorRole.Window, "window"),
    (QPalette.ColorRole.WindowText, "text"),
    (QPalette.ColorRole.Base, "pane"),
    (QPalette.ColorRole.AlternateBase, "sunken"),
    (QPalette.ColorRole.Text, "text"),
    (QPalette.ColorRole.Button, "raised"),
    (QPalette.ColorRole.ButtonText, "text"),
    (QPalette.ColorRole.BrightText, "text"),
    (QPalette.ColorRole.ToolTipBase, "raised"),
    (QPalette.ColorRole.ToolTipText, "text"),
    (QPalette.ColorRole.PlaceholderText, "text_3"),
    (QPalette.ColorRole.Highlight, "selected"),
    (QPalette.ColorRole.HighlightedText, "text"),
    (QPalette.ColorRole.Accent, "accent"),
    (QPalette.ColorRole.Link, "focus"),
    (QPalette.ColorRole.LinkVisited, "focus"),
    (QPalette.ColorRole.Light, "raised"),
    (QPalette.ColorRole.Midlight, "rule"),
    (QPalette.ColorRole.Mid, "edge"),
    (QPalette.ColorRole.Dark, "control"),
    (QPalette.ColorRole.Shadow, "edge"),
)


@dataclass(frozen=True)
class Theme:
    """One look: light or dark, the text size (1.0 to 2.0), and how strong the textures are."""

    dark: bool = False
    scale: float = 1.0
    texture: str = "quiet"  # or "strong", "off"

    def color(self, role: str) -> QColor:
        """The colour of a role of ``palette.toml``; ``KeyError`` if there is no such role."""
        return QColor(self.hex(role))

    def hex(self, role: str) -> str:
        """The same colour as ``#RRGGBB``, for style sheets and exports."""
        palette = resources.palette()
        return (palette.dark if self.dark else palette.light)[role]

    def font(self, role: str) -> QFont:
        """The font of a role, at this theme's size, with figures of equal width."""
        return QFont(_font(role, self.scale))

    def px(self, length: float) -> int:
        """A length that grows with the text, in whole logical pixels."""
        return round(length * self.scale)

    def palette(self) -> QPalette:
        """Qt's palette in this theme's colours."""
        palette = QPalette()
        for role, name in _PALETTE_ROLES:
            palette.setColor(role, self.color(name))
        disabled = QPalette.ColorGroup.Disabled
        for role in (
            QPalette.ColorRole.WindowText,
            QPalette.ColorRole.Text,
            QPalette.ColorRole.ButtonText,
        ):
            palette.setColor(disabled, role, self.color("text_3"))
        return palette

    def style_sheet(self) -> str:
        """Qt's style sheet for buttons, fields, tables, menus, scroll bars and tool tips."""
        return style_sheet(self.hex, self.px)


class InParts(Protocol):
    """Puts a style sheet on a window of its own accord."""

    @property
    def dressed(self) -> QWidget:
        """The window."""

    def put_on(self, sheet: str, others: Sequence[QWidget] = ()) -> None:
        """Put a sheet on it, and in the end on others."""


class _Look(QObject):
    """The theme in force, and the signal that tells of another."""

    changed = Signal(object)

    def __init__(self) -> None:
        super().__init__()
        self.theme = Theme()
        self.follows = False
        self.listening = False
        self.put_on = False  # a theme was put on the program
        self.sheet = ""  # in force; the program's own may be older where windows have theirs
        self.windows: list[InParts] = []


_look = _Look()
#: Emitted with the new Theme after it has been put on.
changed = _look.changed


def current() -> Theme:
    """The theme in force."""
    return _look.theme


def dress_in_parts(window: InParts) -> None:
    """Leave further sheets of a new window to it; it begins in the look in force."""
    if _put_on_all(_look.sheet):
        _put_fonts_on(_look.theme)
    _look.windows.append(window)


def put_off(window: InParts) -> None:
    """The window closes."""
    if window in _look.windows:
        _look.windows.remove(window)


def dress(widget: QWidget) -> None:
    """Dress a new window that belongs to no other, where the program's own sheet is older."""
    if _app().styleSheet() != _look.sheet:
        widget.setStyleSheet(_look.sheet)


def apply(
    app: QApplication, dark: bool | None = None, scale: float = 1.0, texture: str = "quiet"
) -> Theme:
    """Load the fonts and put a look on the whole program.

    Parameters
    ----------
    app : QApplication
        The running application.
    dark : bool or None
        ``None`` follows the system, also when it changes later.
    scale : float
        Text size, 1.0 to 2.0.
    texture : str
        ``"quiet"``, ``"strong"`` or ``"off"``.

    Raises
    ------
    ValueError
        If the text size or the texture is none of these.
    RuntimeError
        If a font file can't be loaded.
    """
    if not 1.0 <= scale <= 2.0:
        raise ValueError(f"text size must lie between 1 and 2: {scale:g}")
    if texture not in {"quiet", "strong", "off"}:
        raise ValueError(f"texture must be quiet, strong or off: {texture}")
    _load_fonts()
    hints = app.styleHints()
    _look.follows = dark is None
    if dark is None:
        hints.unsetColorScheme()
        is_dark = hints.colorScheme() == Qt.ColorScheme.Dark
        if not _look.listening:
            hints.colorSchemeChanged.connect(lambda: _system_changed(app))
            _look.listening = True
    else:
        hints.setColorScheme(Qt.ColorScheme.Dark if dark else Qt.ColorScheme.Light)
        is_dark = dark
    theme = Theme(is_dark, float(scale), texture)
    _put_on(theme)
    if _look.windows:
        # In a turn of its own: telling all takes as long as dressing what is in view.
        QTimer.singleShot(0, _tell)
    else:
        _tell()
    return theme


def _tell() -> None:
    changed.emit(_look.theme)


def _put_on(theme: Theme) -> None:
    """Put on what differs from the look before: each of these goes through every widget."""
    app = _app()
    before, _look.theme = _look.theme if _look.put_on else None, theme
    _look.put_on = True
    if before is None:
        app.setStyle("Fusion")
    if before is None or before.dark != theme.dark or app.palette() != theme.palette():
        app.setPalette(theme.palette())
    sheet_before, _look.sheet = _look.sheet, theme.style_sheet()
    renewed = not _look.windows and _put_on_all(_look.sheet)
    if renewed or before is None or before.scale != theme.scale:
        # After the program's sheet: a first one resets the fonts of single classes.
        _put_fonts_on(theme)
    if not _look.windows or _look.sheet == sheet_before:
        return
    dressed = [window.dressed for window in _look.windows]
    others = [
        widget
        for widget in app.topLevelWidgets()
        if widget.parentWidget() is None and widget not in dressed
    ]
    for widget in others:
        if widget.isVisible():
            widget.setStyleSheet(_look.sheet)
    hidden = [widget for widget in others if not widget.isVisible()]
    for window in _look.windows:
        window.put_on(_look.sheet, hidden)
        hidden = []


def _put_on_all(sheet: str) -> bool:
    """Make a style sheet the program's own, unless it is."""
    app = _app()
    if app.styleSheet() == sheet:
        return False
    # Another sheet in place of one polishes every widget once for each of its parents; the first
    # sheet after none goes through them once.
    app.setStyleSheet("")
    app.setStyleSheet(sheet)
    return True


def _put_fonts_on(theme: Theme) -> None:
    app = _app()
    app.setFont(theme.font("body"))
    for widget, role in (
        ("QPushButton", "body_bold"),
        ("QToolTip", "small"),
        ("QHeaderView", "small_bold"),
    ):
        # The binding takes text here, though its types say bytes.
        app.setFont(theme.font(role), widget)  # type: ignore[arg-type]


def _app() -> QApplication:
    app = QApplication.instance()
    assert isinstance(app, QApplication)
    return app


def _system_changed(app: QApplication) -> None:
    """Put the look on anew when the system goes from light to dark or back."""
    dark = app.styleHints().colorScheme() == Qt.ColorScheme.Dark
    if _look.follows and dark != _look.theme.dark:
        apply(app, None, _look.theme.scale, _look.theme.texture)


@lru_cache(maxsize=1)
def _load_fonts() -> None:
    for file in resources.fonts():
        if QFontDatabase.addApplicationFont(str(file)) < 0:
            raise RuntimeError(f"the font {file.name} can't be loaded")


@lru_cache(maxsize=64)
def _font(role: str, scale: float) -> QFont:
    """Build a font; variable files show their thinnest weight unless the axis is set."""
    pixels, weight, family, italic = _FONTS[role]
    font = QFont(family)
    font.setPixelSize(round(pixels * scale))
    font.setItalic(italic)
    font.setWeight(QFont.Weight(weight))
    font.setVariableAxis(QFont.Tag("wght"), float(weight))
    if family == SERIF:
        font.setVariableAxis(QFont.Tag("opsz"), float(min(60, max(8, round(pixels * scale)))))
    for feature in ("tnum", "lnum"):
        font.setFeature(QFont.Tag(feature), 1)
    return font
