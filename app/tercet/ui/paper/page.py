"""The paper log: text left, understood runs right, live; kept as one step when the runner says."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from pathlib import Path

from PySide6.QtCore import Qt, QTimer
from PySide6.QtGui import QKeyEvent, QResizeEvent
from PySide6.QtWidgets import QBoxLayout, QFileDialog, QWidget

from tercet.formats.paper import Shorthand
from tercet.formats.paper.page import text_of
from tercet.language import tr
from tercet.library import paper_keep, paper_log
from tercet.library.paper_log import PaperView
from tercet.library.views import SeasonView
from tercet.ui import theme
from tercet.ui.page import Context, Page
from tercet.ui.paper import draft as drafts
from tercet.ui.paper.editor import Mark
from tercet.ui.paper.panes import TextPane, UnderstoodPane
from tercet.ui.paper.question import Answer
from tercet.ui.widgets import clear_scroll

#: Typing is read this long after the last key. [ms]
PAUSE_MS = 120
#: Under this width over text size the two panes stand below one another.
FOLD_BELOW = 860


class PaperPage(Page):
    """Types, understands, keeps; or changes the words of one run that is kept already."""

    def __init__(self, context: Context) -> None:
        super().__init__(context)
        self.text_pane, self.understood_pane = TextPane(), UnderstoodPane()
        self.editor, self.list = self.text_pane.editor, self.understood_pane.list
        self.keep = self.understood_pane.keep
        self._pending = drafts.load(context.settings)
        self._aside: drafts.Pending | None = None  # the page, while one run is changed
        self._changing: int | None = None
        self._stored = Shorthand()
        self._view = PaperView("")
        self._asking = self._again = self._renewing = False
        inside = QWidget()
        whole = QBoxLayout(QBoxLayout.Direction.TopToBottom, self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.addWidget(clear_scroll(inside))
        self._columns = QBoxLayout(QBoxLayout.Direction.LeftToRight, inside)
        self._columns.setContentsMargins(12, 2, 12, 4)
        self._columns.setSpacing(10)
        self._columns.addWidget(self.text_pane, 41)
        self._columns.addWidget(self.understood_pane, 56)
        self._pause = QTimer(self)
        self._pause.setSingleShot(True)
        self._pause.setInterval(PAUSE_MS)
        self._pause.timeout.connect(self._read)
        self.editor.setPlainText(self._pending.text)
        self._connect()
        theme.changed.connect(self._fold)

    def _connect(self) -> None:
        pane = self.text_pane
        self.editor.textChanged.connect(self._typed)
        pane.open_file.clicked.connect(self._open_file)
        pane.clear.clicked.connect(lambda: self.editor.replace_all(""))
        pane.shorthand.clicked.connect(self._edit_shorthand)
        pane.cancel.clicked.connect(lambda: self._end_change())
        pane.bare_chosen.connect(self._bare)
        self.keep.clicked.connect(self._keep)
        self.list.answered.connect(self._answered)
        self.list.left_out.connect(self._left_out)
        self.list.line_asked.connect(self._go_to_line)
        self.understood_pane.ask_again.clicked.connect(self._ask_again)

    # What the window asks ----------------------------------------------------------------

    def refresh(self, view: SeasonView) -> None:
        """Read the page anew: what is here may have changed."""
        self._renewing = True
        self._ask(paper_log.stored_shorthand, self._take_shorthand)

    def open_at(self, detail: str) -> None:
        """Change the words of a run that was kept, by its number."""
        if detail.isdigit():
            run_id = int(detail)
            self._ask(paper_keep.line_of, lambda line: self._begin_change(run_id, line), run_id)

    @property
    def ring(self) -> list[QWidget]:
        """The text, the list, and what keeps it."""
        return [self.editor, self.list, self.keep]

    def close_quietly(self) -> None:
        """Keep what was typed."""
        self._pause.stop()
        kept = self._aside if self._aside is not None else self._pending
        drafts.save(self.context.settings, kept)

    @property
    def view(self) -> PaperView:
        """The page as last understood."""
        return self._view

    @property
    def settled(self) -> bool:
        """Whether what is shown is what stands there."""
        return not (self._asking or self._renewing or self._pause.isActive())

    # Reading -----------------------------------------------------------------------------

    def _ask(self, call: object, then: object, *args: object) -> None:
        context = self.context
        context.answers.when(context.library.submit(call, *args), then)  # type: ignore[arg-type]

    def _take_shorthand(self, stored: Shorthand) -> None:
        self._renewing = False
        self._stored = stored
        self._pending.settle(stored)
        self._read()

    def _typed(self) -> None:
        text = self.editor.toPlainText()
        if text != self._pending.text:  # headings set in bold are no typing
            self._pending.text = text
            self._pause.start()

    def _read(self) -> None:
        """Understand the text in the store's thread; one question at a time."""
        self._pause.stop()
        if self._changing is None:
            drafts.save(self.context.settings, self._pending)
        if self._asking:
            self._again = True
            return
        self._asking = True
        draft = replace(self._pending.draft(self._stored), changing=self._changing)
        future = self.context.library.submit(paper_log.read, draft, date.today())
        self.context.answers.when(future, self._show, self._not_read)

    def _not_read(self, _: BaseException) -> None:
        self._asking = False

    def _show(self, view: PaperView) -> None:
        self._asking = False
        self._view = view
        if self._again or view.text != self._pending.text:
            self._again = False
            self._read()
            return
        left_out = self._pending.left_out
        self.understood_pane.show_view(view, left_out, changing=self._changing is not None)
        self.text_pane.show_shorthand(self._pending.shorthand(self._stored))
        marks = [
            Mark(item.start, item.end, item.question)
            for row in view.rows
            if row.state == paper_log.ASKED
            for item in paper_log.waiting(row.entry, left_out)
        ]
        marks += [
            Mark(
                guess.start,
                guess.end,
                tr("{reading}? Not judged until you say", reading=guess.reading),
            )
            for row in view.rows
            for guess in row.entry.guesses
        ]
        self.editor.set_marks(marks)

    # Answering ---------------------------------------------------------------------------

    def _answered(self, answer: Answer) -> None:
        if answer.word:
            self._pending.answer(answer.text, answer.reading)
            self._read()
        elif self.editor.toPlainText()[answer.start : answer.end] == answer.text:
            self.editor.put(answer.start, answer.end, answer.reading)
            self._read()

    def _left_out(self, text: str) -> None:
        self._pending.left_out.append(text)
        self._read()

    def _ask_again(self) -> None:
        self._pending.left_out.clear()
        self._read()

    def _bare(self, unit: str) -> None:
        self._pending.bare = None if unit == self._stored.bare else unit
        self._read()

    def _go_to_line(self, number: int) -> None:
        self.editor.go_to_line(number)
        self.editor.setFocus(Qt.FocusReason.OtherFocusReason)

    def _edit_shorthand(self) -> None:
        from tercet.ui.paper.shorthand_dialog import ShorthandDialog

        dialog = ShorthandDialog(self._pending.shorthand(self._stored), self)
        dialog.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        dialog.chosen.connect(self._use_shorthand)
        dialog.open()

    def _use_shorthand(self, own: Shorthand) -> None:
        self._pending.words.clear()
        self._pending.bare = None
        self._stored = own
        self.context.acts.do(paper_keep.set_shorthand, own)

    # Keeping -----------------------------------------------------------------------------

    def _keep(self) -> None:
        draft = self._pending.draft(self._stored)
        if draft.text != self._view.text:
            self._read()
            return
        self.keep.setEnabled(False)
        self._pause.start()  # also if the store refuses, the page is then shown as it is
        act = self.context.acts.do
        if self._changing is None:
            act(paper_keep.keep, draft, date.today())
        else:
            act(paper_keep.change_words, self._changing, draft, date.today())
            self._end_change(self._changing)

    def _begin_change(self, run_id: int, line: str) -> None:
        if not line:
            return
        if self._aside is None:
            self._aside = self._pending
        self._changing = run_id
        self._pending = drafts.Pending(line)
        self.text_pane.show_change(line.split(":")[0])
        self.editor.setPlainText(line)
        self._read()
        self.editor.go_to_line(1)

    def _end_change(self, changed: int | None = None) -> None:
        """Back to the page that was put aside, or to the run that was changed."""
        if self._changing is None:
            return
        run, self._changing = self._changing, None
        self._pending, self._aside = self._aside or drafts.Pending(), None
        self.text_pane.show_change("")
        self.editor.setPlainText(self._pending.text)
        self._read()
        self.session_asked.emit(run if changed is None else changed)

    # Files and frame ---------------------------------------------------------------------

    def ask_file(self) -> str:
        """Let the user choose a text file."""
        chosen, _ = QFileDialog.getOpenFileName(
            self,
            tr("Open a text file"),
            "",
            ";;".join((tr("Text (*.txt *.md *.csv *.log)"), tr("All files (*)"))),
        )
        return chosen

    def _open_file(self) -> None:
        chosen = self.ask_file()
        if not chosen:
            return
        try:
            text = text_of(Path(chosen).read_bytes())
        except OSError as error:
            self.text_pane.complain(tr("It cannot be read: {why}.", why=error.strerror))
            return
        if text is None:
            self.text_pane.complain(
                tr("It is no plain text, or longer than a diary: 1 MB at most.")
            )
            return
        self.text_pane.complain("")
        before = self.editor.toPlainText().rstrip()
        self.editor.replace_all(f"{before}\n\n{text}" if before else text)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Esc goes back."""
        if event.key() != Qt.Key.Key_Escape:
            super().keyPressEvent(event)
        elif self._changing is not None:
            self._end_change()
        else:
            self.page_asked.emit("season")

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Fold by width over text size."""
        super().resizeEvent(event)
        self._fold()

    def _fold(self, *_: object) -> None:
        narrow = self.width() / theme.current().scale < FOLD_BELOW
        way = QBoxLayout.Direction.TopToBottom if narrow else QBoxLayout.Direction.LeftToRight
        self._columns.setDirection(way)
        # Below one another the page scrolls, so each side keeps a height to be read at.
        least = theme.current().px(220 if narrow else 120)
        self.editor.setMinimumHeight(least)
        self.list.setMinimumHeight(least)
