"""The text of a paper log: line numbers, headings in bold, wavy lines under what is not certain."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from PySide6.QtCore import QRect, QSize, Qt
from PySide6.QtGui import (
    QFont,
    QPainter,
    QPaintEvent,
    QResizeEvent,
    QSyntaxHighlighter,
    QTextCharFormat,
    QTextCursor,
    QTextDocument,
)
from PySide6.QtWidgets import QPlainTextEdit, QTextEdit, QWidget

from tercet.formats.paper.dates import week_of, year_of
from tercet.language import tr
from tercet.ui import theme


@dataclass(frozen=True)
class Mark:
    """Characters of the text to underline, with the question as its hint; in code points."""

    start: int
    end: int
    hint: str


class _Headings(QSyntaxHighlighter):
    """Sets the headings of weeks and years in bold."""

    def __init__(self, document: QTextDocument) -> None:
        super().__init__(document)
        self._bold = QTextCharFormat()
        self._bold.setFontWeight(QFont.Weight.DemiBold)

    def highlightBlock(self, text: str) -> None:
        """Format one line."""
        if week_of(text) is not None or (text.strip() and year_of(text) is not None):
            self._bold.setFont(theme.current().font("body_bold"))
            self.setFormat(0, len(text), self._bold)


class _Numbers(QWidget):
    """The strip of line numbers at the left."""

    def __init__(self, editor: PaperEditor) -> None:
        super().__init__(editor)
        self._editor = editor

    def sizeHint(self) -> QSize:
        """As wide as the largest number."""
        return QSize(self._editor.numbers_width(), 0)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draw the numbers of the lines in view."""
        self._editor.paint_numbers(event)


class PaperEditor(QPlainTextEdit):
    """Plain text, typed or pasted."""

    def __init__(self) -> None:
        super().__init__()
        self.setAccessibleName(tr("Paper log, as typed"))
        self.setTabChangesFocus(True)
        self.setLineWrapMode(QPlainTextEdit.LineWrapMode.WidgetWidth)
        self._marks: tuple[Mark, ...] = ()
        self._numbers = _Numbers(self)
        self._headings = _Headings(self.document())
        self.blockCountChanged.connect(self._make_room)
        self.updateRequest.connect(self._scrolled)
        theme.changed.connect(self._dress)
        self._dress()

    def set_marks(self, marks: Sequence[Mark]) -> None:
        """Underline these places, and no others."""
        self._marks = tuple(marks)
        wave = QTextCharFormat()
        wave.setUnderlineStyle(QTextCharFormat.UnderlineStyle.WaveUnderline)
        wave.setUnderlineColor(theme.current().color("check"))
        selections = []
        text = self.toPlainText()
        for mark in self._marks:
            if mark.end > len(text):
                continue
            selection = QTextEdit.ExtraSelection()
            selection.format = QTextCharFormat(wave)
            selection.format.setToolTip(mark.hint)
            selection.cursor = self._cursor(text, mark.start, mark.end)
            selections.append(selection)
        self.setExtraSelections(selections)

    @property
    def marks(self) -> tuple[Mark, ...]:
        """What is underlined."""
        return self._marks

    def put(self, start: int, end: int, words: str) -> None:
        """Write words in the place of others, as if typed: the editor's own undo takes it back."""
        cursor = self._cursor(self.toPlainText(), start, end)
        cursor.insertText(words)

    def replace_all(self, text: str) -> None:
        """Another text; the editor's own undo brings the one before back."""
        cursor = self.textCursor()
        cursor.select(QTextCursor.SelectionType.Document)
        cursor.insertText(text)

    def go_to_line(self, number: int) -> None:
        """Put the cursor at the end of a line, counted from 1, and bring it into view."""
        block = self.document().findBlockByNumber(number - 1)
        if block.isValid():
            cursor = QTextCursor(block)
            cursor.movePosition(QTextCursor.MoveOperation.EndOfBlock)
            self.setTextCursor(cursor)
            self.ensureCursorVisible()

    def _cursor(self, text: str, start: int, end: int) -> QTextCursor:
        """A cursor over characters; Qt counts those outside the basic plane twice."""
        cursor = QTextCursor(self.document())
        cursor.setPosition(_units(text[:start]))
        cursor.setPosition(_units(text[:end]), QTextCursor.MoveMode.KeepAnchor)
        return cursor

    def numbers_width(self) -> int:
        """Room for the largest line number."""
        figures = max(2, len(str(self.blockCount())))
        return self.fontMetrics().horizontalAdvance("9") * figures + theme.current().px(22)

    def paint_numbers(self, event: QPaintEvent) -> None:
        """Draw the line numbers beside their lines."""
        look = theme.current()
        painter = QPainter(self._numbers)
        painter.setFont(look.font("small"))
        painter.setPen(look.color("text_3"))
        block = self.firstVisibleBlock()
        top = self.blockBoundingGeometry(block).translated(self.contentOffset()).top()
        line = self.fontMetrics().height()
        while block.isValid() and top <= event.rect().bottom():
            if block.isVisible():
                room = QRect(0, round(top), self._numbers.width() - look.px(12), line)
                flags = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
                painter.drawText(room, flags, str(block.blockNumber() + 1))
            top += self.blockBoundingRect(block).height()
            block = block.next()
        painter.end()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Keep the numbers as high as the text."""
        super().resizeEvent(event)
        self._place_numbers()

    def _make_room(self) -> None:
        self.setViewportMargins(self.numbers_width(), 0, 0, 0)
        self._place_numbers()

    def _place_numbers(self) -> None:
        room = self.contentsRect()
        self._numbers.setGeometry(room.left(), room.top(), self.numbers_width(), room.height())

    def _scrolled(self, rect: QRect, moved: int) -> None:
        if moved:
            self._numbers.scroll(0, moved)
        else:
            self._numbers.update(0, rect.y(), self._numbers.width(), rect.height())

    def _dress(self, *_: object) -> None:
        self.setFont(theme.current().font("body"))
        self._make_room()
        self._headings.rehighlight()
        self.set_marks(self._marks)


def _units(text: str) -> int:
    return len(text) if text.isascii() else len(text.encode("utf-16-le")) // 2
