"""What other thresholds would change: two stairs on one scale, shares and runs in words."""

from __future__ import annotations

from typing import Any

from PySide6.QtWidgets import QGridLayout, QProgressBar, QVBoxLayout, QWidget

from tercet.library.library import Preview
from tercet.ui import words
from tercet.ui.widgets import Label, StairWidget


class ChangePart(QWidget):
    """*Now* above *then*, after a bar that tells how far the judging is."""

    def __init__(self, units: words.Units = "km") -> None:
        super().__init__()
        self._units = units
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(4)
        column.addWidget(Label("What this would change", "block"))
        self.bar = QProgressBar()
        self.bar.setTextVisible(False)
        self.bar.setAccessibleName("Runs judged")
        column.addWidget(self.bar)
        self._result = QWidget()
        grid = QGridLayout(self._result)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setColumnStretch(1, 1)
        self.now_stair, self.then_stair = StairWidget(), StairWidget()
        self.now_words, self.then_words = Label("", "small_bold"), Label("", "small_bold")
        for row, (word, stair, label) in enumerate(
            (
                ("now", self.now_stair, self.now_words),
                ("then", self.then_stair, self.then_words),
            )
        ):
            grid.addWidget(Label(word, "small", "text_2"), row, 0)
            grid.addWidget(stair, row, 1)
            grid.addWidget(label, row, 2)
        column.addWidget(self._result)
        self.words = Label("", "small", "text_2", wrap=True)
        column.addWidget(self.words)
        self.hide()

    def show_waiting(self) -> None:
        """Judging has begun."""
        self.bar.setRange(0, 0)
        self.words.setText("Every run is judged by them, without changing anything yet.")
        self.bar.show()
        self._result.hide()
        self.show()

    def show_progress(self, now: Any) -> None:
        """Judging goes on."""
        self.bar.setRange(0, max(now.total, 1))
        self.bar.setValue(now.done)

    def show_preview(self, preview: Preview, *, estimated: bool) -> None:
        """Say what would change; ``estimated`` is whether what is in force now is an estimate."""
        self.bar.hide()
        full = max(sum(preview.before[:3]), sum(preview.after[:3]))
        then = any(entry.estimated for entry in preview.entries)
        for name, stair, label, sums, about in (
            ("now", self.now_stair, self.now_words, preview.before, estimated),
            ("then", self.then_stair, self.then_words, preview.after, then),
        ):
            stair.set(tuple(sums), full)
            judged = sum(sums[:3])
            label.setText(
                words.share(sums[0] / judged, estimated=about) + " easy" if judged else "not judged"
            )
            stair.setAccessibleName(f"{name}: {label.text()}")
        self._result.setVisible(bool(preview.judgements))
        runs = "1 run changes" if preview.changed == 1 else f"{preview.changed} runs change"
        lines = self._lines(preview)
        self.words.setText(
            f"{lines} Of {len(preview.judgements)}, {runs}. It can be undone with Ctrl+Z."
            if preview.judgements
            else f"{lines} There are no runs yet; new ones will be judged by these."
        )

    def _lines(self, preview: Preview) -> str:
        """The lines in force last, in words."""
        entry = max(preview.entries, key=lambda item: item.start)
        about = "about " if entry.estimated else ""
        said = []
        for name in ("lt1", "lt2"):
            speed = getattr(entry.values, f"{name}_speed")
            beats = getattr(entry.values, f"{name}_hr")
            bits = [f"{about}{words.pace(speed, self._units)}"] if speed is not None else []
            bits += [f"{about}{words.heart_rate(beats)}"] if beats is not None else []
            if bits:
                said.append(f"{name.upper()} {', '.join(bits)}")
        return f"{'; '.join(said)}."
