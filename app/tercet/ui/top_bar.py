"""The top row: the views as words, the runner, the menu, and the one primary button."""

from __future__ import annotations

from itertools import pairwise

from PySide6.QtCore import QPointF, QSize, Qt, Signal
from PySide6.QtGui import QPainter, QPaintEvent, QPen, QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QMenu, QPushButton, QSizePolicy, QVBoxLayout, QWidget

from tercet.language import mark, tr
from tercet.ui import theme
from tercet.ui.pages import PAGES, of_group
from tercet.ui.widgets import Label, button

VIEWS = (("season", mark("Season")), ("session", mark("Session")))
#: Beside a name: its margins and the mark of the menu. [px]
ROOM = 40
#: A line of views below the names. [px at 100 %]
VIEWS_HEIGHT = 40


class ViewButton(QPushButton):
    """A view's word, with a bar under the current one."""

    def __init__(self, text: str) -> None:
        super().__init__(text)
        self.setProperty("flat", True)
        self.setCheckable(True)
        self.setAutoExclusive(True)
        # As high as the bar, also after the style sheet has said again how high buttons are.
        self.setSizePolicy(QSizePolicy.Policy.Minimum, QSizePolicy.Policy.Expanding)

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


class NameButton(ViewButton):
    """A name with a menu of the pages that belong to it; gives way with an ellipsis."""

    def __init__(self) -> None:
        super().__init__("")
        self.setAutoExclusive(False)
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Expanding)

    def name(self, text: str) -> None:
        """Show another name; without pages it is not to be pressed."""
        menu = self.menu()
        self.setText(text)
        self.setToolTip(text)
        self.setEnabled(menu is not None and not menu.isEmpty())
        self.setVisible(bool(text))

    def sizeHint(self) -> QSize:
        """Room for the name and its mark."""
        width = self.fontMetrics().horizontalAdvance(self.text()) + ROOM
        return QSize(width, super().sizeHint().height())

    def minimumSizeHint(self) -> QSize:
        """A few letters wide."""
        narrow = self.fontMetrics().averageCharWidth() * 6 + ROOM
        return QSize(min(narrow, self.sizeHint().width()), super().sizeHint().height())

    def nextCheckState(self) -> None:
        """Pressing it opens the menu; only the page in view marks it."""

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draw the name, a small mark for the menu, and the bar."""
        look = theme.current()
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setFont(look.font("body_bold"))
        painter.setPen(look.color("text"))
        room = self.rect().adjusted(12, 0, -12 if not self.isEnabled() else -24, 0)
        shown = self.fontMetrics().elidedText(
            self.text(), Qt.TextElideMode.ElideRight, room.width()
        )
        painter.drawText(room, Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter, shown)
        if self.isEnabled():
            x, y = self.width() - 18, self.height() / 2
            painter.setPen(QPen(look.color("text_2"), 1.4))
            painter.drawPolyline([QPointF(x, y - 2), QPointF(x + 4, y + 2), QPointF(x + 8, y - 2)])
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
        whole = QVBoxLayout(self)
        whole.setContentsMargins(16, 0, 16, 0)
        whole.setSpacing(0)
        self._upper, self._lower = QHBoxLayout(), QHBoxLayout()
        for line in (self._upper, self._lower):
            line.setSpacing(8)
            whole.addLayout(line)
        self._title = Label("Tercet", "page_title")
        self._views: dict[str, ViewButton] = {}
        further = tuple((entry.key, entry.title) for entry in of_group("view"))
        for key, word in (*VIEWS, *further):
            made = ViewButton(tr(word))
            made.clicked.connect(lambda _=False, key=key: self.view_asked.emit(key))
            self._views[key] = made
        self.season, self.runner = NameButton(), NameButton()
        self.season_menu, self.runner_menu = QMenu(self), QMenu(self)
        for made, menu, about in (
            (self.season, self.season_menu, tr("Pages of the season")),
            (self.runner, self.runner_menu, tr("Pages of the runner")),
        ):
            menu.setAccessibleName(about)
            made.setMenu(menu)
            made.setAccessibleName(about)
        self.menu_button = QPushButton(tr("Menu"))
        self.menu_button.setProperty("flat", True)
        self.menu_button.setShortcut("F10")
        self.menu_button.setAccessibleName(tr("Menu"))
        self.menu = QMenu(self)
        self.menu_button.setMenu(self.menu)
        self.add = button(tr("Add recordings"), primary=True)
        self.add.clicked.connect(self.add_asked)
        self._lines = 0
        self._arrange(1)
        self.set_current("season")
        self._dress(theme.current())
        theme.changed.connect(self._dress)

    def _arrange(self, lines: int) -> None:
        """Put everything in one line, or the views in a line of their own below."""
        if lines == self._lines:
            return
        self._lines = lines
        for line in (self._upper, self._lower):
            while line.count():
                line.takeAt(0)
        self._upper.addWidget(self._title)
        self._upper.addSpacing(20)
        views = self._upper if lines == 1 else self._lower
        for made in self._views.values():
            views.addWidget(made)
        if lines == 2:
            self._lower.addStretch(1)
        self._upper.addStretch(1)
        for widget in (self.season, self.runner, self.menu_button, self.add):
            self._upper.addWidget(widget)
        # The focus goes along as the eye does.
        order = [*self._views.values(), self.season, self.runner, self.menu_button, self.add]
        for first, second in pairwise(order):
            self.setTabOrder(first, second)
        self._size(theme.current())

    def _fold(self) -> None:
        """One line where it fits with whole names, else two."""
        parts = [self._title, *self._views.values(), self.menu_button, self.add]
        names = [made for made in (self.season, self.runner) if made.text()]
        wanted = [
            max(part.minimumSizeHint().width(), part.minimumWidth(), part.sizeHint().width())
            for part in (*parts, *names)
        ]
        self._arrange(1 if sum(wanted) + 8 * len(wanted) + 60 <= self.width() else 2)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Fold by the width; a height that is being set must not set another one."""
        super().resizeEvent(event)
        if event.size().width() != event.oldSize().width():
            self._fold()

    def minimumSizeHint(self) -> QSize:
        """As wide as two lines ask for, so that a window may always grow narrow enough to fold."""
        views = sum(view.minimumWidth() + 8 for view in self._views.values())
        fixed = [self._title, self.season, self.runner, self.menu_button, self.add]
        upper = sum(part.minimumSizeHint().width() + 8 for part in fixed) + 20
        return QSize(max(views, upper) + 32, self.minimumHeight())

    def set_runner(self, name: str) -> None:
        """Name whose season it is."""
        self.runner.name(name)
        self._fold()

    def set_season_name(self, name: str) -> None:
        """Name the season."""
        self.season.name(name)
        self._fold()

    def set_current(self, key: str) -> None:
        """Mark the current view, or the name it is reached from."""
        groups = {entry.key: entry.group for entry in PAGES}
        for made in (*self._views.values(), self.season, self.runner):
            made.setAutoExclusive(False)
        for name, view in self._views.items():
            view.setChecked(name == key)
            view.setAutoExclusive(True)
        self.season.setChecked(groups.get(key) == "season")
        self.runner.setChecked(groups.get(key) == "runner")

    def set_views(self, season: bool, session: bool) -> None:
        """Say which views have something to show."""
        for key, made in self._views.items():
            made.setEnabled(session if key == "session" else season)

    @property
    def current(self) -> ViewButton:
        """The current view's word."""
        every = (*self._views.values(), self.season, self.runner)
        return next((made for made in every if made.isChecked()), self._views["season"])

    def _dress(self, look: theme.Theme) -> None:
        self._size(look)
        self._fold()

    def _size(self, look: theme.Theme) -> None:
        self.setFixedHeight(look.px(52 if self._lines == 1 else 52 + VIEWS_HEIGHT))
        for made in self._views.values():
            made.setFont(look.font("body_bold"))
            made.setFixedHeight(look.px(52 if self._lines == 1 else VIEWS_HEIGHT))
            made.setMinimumWidth(made.fontMetrics().horizontalAdvance(made.text()) + 28)
        for name in (self.season, self.runner):
            name.setFont(look.font("body_bold"))
            name.setFixedHeight(look.px(52))
