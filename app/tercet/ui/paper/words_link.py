"""On the page of a run from paper: the way to the words that it was read from."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QFrame, QHBoxLayout

from tercet.language import tr
from tercet.ui.widgets import Label, button


class WordsLink(QFrame):
    """Shown for runs from paper only."""

    asked = Signal(str)  # the page with the run, as a page's key

    def __init__(self) -> None:
        super().__init__()
        self.setProperty("pane", True)
        self._id = 0
        self.change = button(tr("Change the words…"))
        self.change.clicked.connect(lambda: self.asked.emit(f"paper:{self._id}"))
        line = QHBoxLayout(self)
        line.setContentsMargins(16, 8, 16, 8)
        self.words = Label("", "body", "text_2", wrap=True)
        line.addWidget(self.words, 1)
        line.addWidget(self.change, 0, Qt.AlignmentFlag.AlignTop)
        self.hide()

    def show_run(self, run_id: int, typed: str) -> None:
        """Show the words of this run, if it has any, and lead to them."""
        self._id = run_id
        self.words.setText(f"“{typed}”")
        self.setVisible(bool(typed))
