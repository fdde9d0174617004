"""The top row: the views as words, the runner, the menu, and the one primary button."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QHBoxLayout, QMenu, QPushButton, QWidget

from tercet.ui import theme
from tercet.ui.widgets import ElidedLabel, Label, button

VIEWS = (("season", "Season"), ("session", "Session"))


class ViewButton(QPushButton):
    """A view's word, with a bar under the current one."""

    def __init__(self, text: str) -> None:
        super().__init__(text)
        self.setProperty("flat", True)
        self.setCheckable(True)
        self.setAutoExclusive(True)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draw the word and the bar."""
        look = theme.current()
        painter = QPainter(self)
        painter.setFont(look.font("body_bold" if self.isChecked() else "body"))
        painter.setPen(look.color("text" if self.isChecked() else "text_2"))
        if not self.isEnabled():
            painter.setPen(look.color("text_3"))
        painter.drawText(self.rect(), Qt.AlignmentFlag.AlignCenter, self.text())
        if self.isChecked():
            foot = self.rect().adjusted(8, self.height() - 4, -8, 0)
            painter.fillRect(foot, look.color("text"))


class TopBar(QWidget):
    """Says where one is and leads elsewhere."""

    view_asked = Signal(str)
    add_asked = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.setProperty("bar", True)
        line = QHBoxLayout(self)
        line.setContentsMargins(16, 0, 16, 0)
        line.setSpacing(8)
        line.addWidget(Label("Tercet", "page_title"))
        line.addSpacing(20)
        self._views: dict[str, ViewButton] = {}
        for key, word in VIEWS:
            made = ViewButton(word)
            made.clicked.connect(lambda _=False, key=key: self.view_asked.emit(key))
            self._views[key] = made
            line.addWidget(made)
        line.addStretch(1)
        self.runner = ElidedLabel("", "body_bold")
        self.runner.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        line.addWidget(self.runner, 4)
        self.menu_button = QPushButton("Menu")
        self.menu_button.setProperty("flat", True)
        self.menu_button.setShortcut("F10")
        self.menu_button.setAccessibleName("Menu")
        self.menu = QMenu(self)
        self.menu_button.setMenu(self.menu)
        line.addWidget(self.menu_button)
        self.add = button("Add recordings", primary=True)
        self.add.clicked.connect(self.add_asked)
        line.addWidget(self.add)
        self.set_current("season")
        self._dress(theme.current())
        theme.changed.connect(self._dress)

    def set_runner(self, name: str) -> None:
        """Name whose season it is."""
        self.runner.setText(name)

    def set_current(self, key: str) -> None:
        """Mark the current view."""
        self._views[key].setChecked(True)

    def set_views(self, season: bool, session: bool) -> None:
        """Say which views have something to show."""
        self._views["season"].setEnabled(season)
        self._views["session"].setEnabled(session)

    @property
    def current(self) -> ViewButton:
        """The current view's word."""
        return next(made for made in self._views.values() if made.isChecked())

    def _dress(self, look: theme.Theme) -> None:
        self.setFixedHeight(look.px(52))
        for made in self._views.values():
            made.setFont(look.font("body_bold"))
            made.setFixedHeight(look.px(52))
            made.setMinimumWidth(made.fontMetrics().horizontalAdvance(made.text()) + 28)
