"""The review's page in the window: its pages, the chosen one with its words, and its choices."""

from __future__ import annotations

from dataclasses import replace

from PySide6.QtCore import Qt
from PySide6.QtGui import QAction, QKeySequence, QResizeEvent
from PySide6.QtWidgets import (
    QBoxLayout,
    QFrame,
    QHBoxLayout,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)

from tercet.language import SOURCE, code, mark, tr
from tercet.library.review import build, choices
from tercet.library.review.choices import Choices
from tercet.library.review.content import Page as ReviewPageContent
from tercet.library.review.content import Review
from tercet.library.views import SeasonView
from tercet.ui import theme
from tercet.ui.look import Look as WindowLook
from tercet.ui.page import Context, Page
from tercet.ui.review.behind import Behind
from tercet.ui.review.choices_pane import ChoicesPane, Words
from tercet.ui.review.frame import foot_of
from tercet.ui.review.looks import Look, look
from tercet.ui.review.page_list import PageList
from tercet.ui.review.page_view import PageView
from tercet.ui.review.saving import Saving
from tercet.ui.review.show import Show
from tercet.ui.twin import fill_table, number_table
from tercet.ui.widgets import Label, Pane, button, clear_scroll

#: Under this width, at 100 % text, the choices go below the page.
FOLD_WIDTH = 1200
LIMIT = 16_777_215  # Qt's own for no limit [px]


class Organiser(Page):
    """Season review: what is shown, in which words and order, and where it goes."""

    def __init__(self, context: Context) -> None:
        super().__init__(context)
        self._view: SeasonView | None = None
        self._review: Review | None = None
        self._chosen = Choices()
        self._key = ""
        self._scope = str(context.settings.value("review_scope", ""))
        self.list = PageList()
        self.page = PageView()
        self.table = number_table(tr("Numbers of this page"))
        self.notes = Words(tr("Notes for the presenter"), 4, tr("What to say beside this page"))
        self.pane = ChoicesPane()
        self.saving = Saving(self)
        self.show_ = Show(self)
        self._stack = QStackedWidget()
        self._heading = Label("", "pane_title")
        self._numbers = button(tr("Numbers (Ctrl+T)"))
        self._count = Label("", "small", "text_2")
        self._sides = QBoxLayout(QBoxLayout.Direction.LeftToRight)
        self._right = QFrame()
        self._arrange()
        self._connect()
        theme.changed.connect(self._dress)
        self._dress()

    # What is shown -----------------------------------------------------------------------

    def refresh(self, view: SeasonView) -> None:
        """Read the review anew."""
        self._view = view
        self.context.answers.when(
            self.context.library.submit(build.of_view, view, self._scope, self._units),
            self._show,
        )

    def _show(self, made: tuple[Review, Choices]) -> None:
        self._review, self._chosen = made
        keys = [page.key for page in self._review.pages]
        if self._key not in keys:
            self._key = keys[0]
        count = len(self._review.shown)
        self._count.setText(tr("{n} of {count} shown", n=count, count=len(keys)))
        self.list.show_pages(self._review.pages, self.look, self._key)
        self._show_page()
        self.show_.update(self._review, self._view)

    @property
    def _units(self) -> str:
        return WindowLook(self.context.settings).units

    @property
    def review(self) -> Review | None:
        """The review as last read."""
        return self._review

    @property
    def look(self) -> Look:
        """The look chosen for the screen, else the window's."""
        return look(self._look_name)

    @property
    def _look_name(self) -> str:
        kept = str(self.context.settings.value("review_look", ""))
        return kept if kept in ("light", "dark", "ink") else self._window_look

    @property
    def _window_look(self) -> str:
        return "dark" if theme.current().dark else "light"

    def current(self) -> ReviewPageContent | None:
        """The chosen page."""
        pages = self._review.pages if self._review is not None else ()
        return next((page for page in pages if page.key == self._key), None)

    def choose(self, key: str) -> None:
        """Show another page."""
        self.pane.save_now()
        self.notes.save()
        self._key = key
        self._show_page()

    def choose_in_list(self, key: str) -> None:
        """Choose a page as a hand on the list does."""
        if self._review is not None:
            keys = [page.key for page in self._review.pages]
            self.list.setCurrentRow(keys.index(key) if key in keys else 0)
            self.list.setFocus(Qt.FocusReason.OtherFocusReason)

    def _show_page(self) -> None:
        page, review = self.current(), self._review
        if page is None or review is None:
            return
        foot = foot_of(review, page)
        out = tr("Left out") if page.hidden else tr("Nothing to show yet")
        heading = tr("Page {n} of {count}", n=foot.number, count=foot.count)
        self._heading.setText(heading if foot.number else out)
        other = self.page.page is None or self.page.page.key != page.key
        self.page.show_page(page, self.look, foot)
        self._fill_table()
        self.notes.show_words(page.notes, other=other)
        self.pane.show_review(review, page, self._chosen, self._look_name)

    @property
    def ring(self) -> list[QWidget]:
        """Pages, the page, its notes, its choices."""
        return [self.list, self.page, self.notes, self.pane.title, self.pane.present]

    def close_quietly(self) -> None:
        """Keep what was typed, stop what is written and shown."""
        self.pane.save_now()
        self.notes.save()
        self.saving.close()
        self.show_.end()

    # What is chosen ----------------------------------------------------------------------

    def _keep(self, chosen: Choices, step: str, quiet: bool = True, said: str = "") -> None:
        if self._review is None or chosen == self._chosen:
            return
        self._chosen = chosen
        self.context.acts.do(choices.keep, self._review.scope, chosen, step, quiet=quiet, said=said)

    def _words(self, kind: str, text: str) -> None:
        page = self.current()
        if page is None:
            return
        if kind == "titles" and not page.retitled and text == page.title:
            return
        step = {"titles": "Retitle", "remarks": "Remark on", "notes": "Notes for"}[kind]
        self._keep(self._chosen.with_words(kind, page.key, text), f"{step} {page.name.lower()}")

    def _lines(self, text: str) -> None:
        lines = tuple(line.strip() for line in text.splitlines() if line.strip())
        day = self._view.today.isoformat() if self._view is not None and lines else ""
        self._keep(
            replace(self._chosen, next_lines=lines, written=day), mark("Write the next block")
        )

    def _leave_out(self, out: bool) -> None:
        page = self.current()
        if page is not None:
            # Nouns keep their capitals where a language writes them so.
            name = page.name.lower() if code() == SOURCE else page.name
            step = f"{'Leave out' if out else 'Take in'} {page.name.lower()}"
            said = tr("Leave out {page}", page=name) if out else tr("Take in {page}", page=name)
            self._keep(self._chosen.leave_out(page.key, out), step, quiet=False, said=said)

    def _move(self, key: str, by: int) -> None:
        if self._review is not None:
            keys = [page.key for page in self._review.pages]
            self._key = key
            self._keep(self._chosen.move(keys, key, by), mark("Move a page"), quiet=False)

    def _choose_scope(self, key: str) -> None:
        self._scope = key
        if "+" in key:
            self._key = "pair"
        self.context.settings.setValue("review_scope", key)
        if self._view is not None:
            self.refresh(self._view)

    def _choose_pair(self, then: str, now: str) -> None:
        self._keep(replace(self._chosen, then=then, now=now), mark("Compare other blocks"))

    def _choose_look(self, name: str) -> None:
        self.context.settings.setValue("review_look", name)
        if self._review is not None:
            self.list.show_pages(self._review.pages, self.look, self._key)
            self._show_page()
            self.show_.set_look(self.look)

    # What is opened ----------------------------------------------------------------------

    def present(self) -> None:
        """Show the review from the chosen page on."""
        if self._review is not None and self._view is not None:
            self.pane.save_now()
            self.notes.save()
            self.show_.start(self._review, self._view, self._key, self.look)

    def _open_row(self, row: int) -> None:
        """Open what is behind a number; several runs are listed first."""
        page = self.current()
        if page is None or self._view is None:
            return
        if row < 0:
            self._numbers.setChecked(True)
            self.table.setFocus(Qt.FocusReason.OtherFocusReason)
            return
        ids = set(page.table.behind(row))
        sessions = [session for session in self._view.sessions if session.id in ids]
        if len(sessions) == 1:
            self.session_asked.emit(sessions[0].id)
        elif sessions:
            heading = next((cell for cell in page.table.rows[row] if cell), page.name)
            made = Behind(heading, sessions, self)
            made.session_asked.connect(self.session_asked)
            made.open()

    def _show_numbers(self, shown: bool) -> None:
        self._stack.setCurrentWidget(self.table if shown else self.page)
        self._fill_table()

    def _fill_table(self) -> None:
        """Fill the table while it is looked at; it takes its time."""
        page = self.current()
        if page is not None and self._stack.currentWidget() is self.table:
            table = page.table
            fill_table(self.table, table.headings, table.rows, set(table.words) or {0})

    # Building ----------------------------------------------------------------------------

    def _arrange(self) -> None:
        outer = QHBoxLayout(self)
        outer.setContentsMargins(12, 2, 12, 4)
        outer.setSpacing(10)
        left, middle, inner = Pane(), Pane(), QWidget()
        outer.addWidget(left)
        self._scroll = clear_scroll(inner)
        outer.addWidget(self._scroll, 1)
        inner.setLayout(self._sides)
        self._sides.setContentsMargins(0, 0, 0, 0)
        self._sides.setSpacing(10)
        self._sides.addWidget(middle, 1)
        self._sides.addWidget(self._right)
        column = QVBoxLayout(left)
        column.setContentsMargins(1, 10, 1, 1)
        head = QHBoxLayout()
        head.setContentsMargins(14, 0, 12, 0)
        head.addWidget(Label(tr("Pages"), "pane_title"))
        head.addStretch(1)
        head.addWidget(self._count)
        column.addLayout(head)
        column.addWidget(self.list, 1)
        hint = Label(tr("Alt with an arrow moves a page."), "small", "text_2", wrap=True)
        hint.setContentsMargins(14, 0, 8, 6)
        column.addWidget(hint)
        self._left = left
        inside = QVBoxLayout(middle)
        inside.setContentsMargins(16, 10, 16, 10)
        row = QHBoxLayout()
        row.addWidget(self._heading)
        row.addStretch(1)
        self._numbers.setCheckable(True)
        row.addWidget(self._numbers)
        inside.addLayout(row)
        inside.addWidget(self._stack, 1)
        self._stack.addWidget(self.page)
        self._stack.addWidget(self.table)
        words = QHBoxLayout()
        words.addWidget(Label(tr("Notes for the presenter"), "small_bold"))
        words.addStretch(1)
        words.addWidget(Label(tr("not on the page, not in any file"), "small", "text_2"))
        inside.addLayout(words)
        inside.addWidget(self.notes)
        self._right.setProperty("pane", True)
        held = QVBoxLayout(self._right)
        held.setContentsMargins(1, 1, 1, 1)
        self._choices = clear_scroll(self.pane)
        held.addWidget(self._choices)

    def _connect(self) -> None:
        self.list.chosen.connect(self.choose)
        self.list.moved.connect(self._move)
        self.page.row_asked.connect(self._open_row)
        self.page.words_asked.connect(lambda: self.pane.title.setFocus())
        self.table.activated.connect(lambda index: self._open_row(index.row()))
        self.notes.said.connect(lambda text: self._words("notes", text))
        self._numbers.toggled.connect(self._show_numbers)
        pane = self.pane
        pane.titled.connect(lambda text: self._words("titles", text))
        pane.remarked.connect(lambda text: self._words("remarks", text))
        pane.lines_said.connect(self._lines)
        pane.left_out.connect(self._leave_out)
        pane.scope_chosen.connect(self._choose_scope)
        pane.pair_chosen.connect(self._choose_pair)
        pane.look_chosen.connect(self._choose_look)
        pane.present_asked.connect(self.present)
        pane.pdf_asked.connect(lambda size, ink: self._save("pdf", ink, size))
        pane.html_asked.connect(lambda: self._save("html", self.look))
        pane.tables_asked.connect(lambda: self._save("csv"))
        pane.picture_asked.connect(self._save_picture)
        pane.stop_asked.connect(self.saving.stop)
        self.saving.begun.connect(
            lambda name: pane.show_writing(tr("Writing {file}", file=name), True)
        )
        self.saving.progressed.connect(pane.show_progress)
        self.saving.ended.connect(lambda words: pane.show_writing(words, False))
        self.show_.left.connect(self.choose_in_list)
        for keys, call in (
            ("F5", self.present),
            ("Shift+F5", self.present),
            ("Ctrl+T", self._numbers.toggle),
        ):
            action = QAction(self)
            action.setShortcut(QKeySequence(keys))
            action.setShortcutContext(Qt.ShortcutContext.WidgetWithChildrenShortcut)
            action.triggered.connect(call)
            self.addAction(action)

    def _save(self, kind: str, *given: object) -> None:
        self.pane.save_now()
        if self._review is not None:
            getattr(self.saving, kind)(self._review, *given)

    def _save_picture(self) -> None:
        page = self.current()
        if self._review is not None and page is not None:
            self.saving.picture(self._review, page, self.look)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._fold()

    def _dress(self, *_: object) -> None:
        self._fold()
        if self._review is not None:
            self._show_page()

    def _fold(self) -> None:
        """Where it is narrow, put the choices under the page and let the whole scroll."""
        look = theme.current()
        self._left.setFixedWidth(min(look.px(236), int(0.26 * self.width())))
        narrow = self.width() / look.scale < FOLD_WIDTH
        ways = QBoxLayout.Direction
        self._sides.setDirection(ways.TopToBottom if narrow else ways.LeftToRight)
        if narrow:
            self._right.setMinimumWidth(0)
            self._right.setMaximumWidth(LIMIT)
            self._choices.setMinimumHeight(self.pane.sizeHint().height() + 8)
            room = self.width() - self._left.width() - look.px(90)
            self._stack.setMinimumHeight(int(room * 9 / 16))
        else:
            self._right.setFixedWidth(look.px(320))
            self._choices.setMinimumHeight(0)
            self._stack.setMinimumHeight(0)
