"""What other thresholds would change: two stairs on one scale, shares and runs in words."""

from __future__ import annotations

from typing import Any

from PySide6.QtWidgets import QGridLayout, QProgressBar, QVBoxLayout, QWidget

from tercet.language import mark, several, tr
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
        column.addWidget(Label(tr("What this would change"), "block"))
        self.bar = QProgressBar()
        self.bar.setTextVisible(False)
        self.bar.setAccessibleName(tr("Runs judged"))
        column.addWidget(self.bar)
        self._result = QWidget()
        grid = QGridLayout(self._result)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setColumnStretch(1, 1)
        self.now_stair, self.then_stair = StairWidget(), StairWidget()
        self.now_words, self.then_words = Label("", "small_bold"), Label("", "small_bold")
        for row, (word, stair, label) in enumerate(
            (
                (tr("now"), self.now_stair, self.now_words),
                (tr("then"), self.then_stair, self.then_words),
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
        self.words.setText(tr("Every run is judged by them, without changing anything yet."))
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
            (tr("now"), self.now_stair, self.now_words, preview.before, estimated),
            (tr("then"), self.then_stair, self.then_words, preview.after, then),
        ):
            stair.set(tuple(sums), full)
            judged = sum(sums[:3])
            label.setText(
                tr("{share} easy", share=words.share(sums[0] / judged, estimated=about))
                if judged
                else tr("not judged")
            )
            stair.setAccessibleName(f"{name}: {label.text()}")
        self._result.setVisible(bool(preview.judgements))
        said = tr("There are no runs yet; new ones will be judged by these.")
        if preview.judgements:
            said = several(
                preview.changed,
                mark("Of {whole}, {n} run changes. It can be undone with Ctrl+Z."),
                mark("Of {whole}, {n} runs change. It can be undone with Ctrl+Z."),
                whole=len(preview.judgements),
            )
        self.words.setText(f"{self._lines(preview)} {said}")

    def _lines(self, preview: Preview) -> str:
        """The lines in force last, in words."""
        entry = max(preview.entries, key=lambda item: item.start)
        said = []
        for name in ("lt1", "lt2"):
            speed = getattr(entry.values, f"{name}_speed")
            beats = getattr(entry.values, f"{name}_hr")
            bits = [words.pace(speed, self._units)] if speed is not None else []
            bits += [words.heart_rate(beats)] if beats is not None else []
            if entry.estimated:
                bits = [tr("about {amount}", amount=bit) for bit in bits]
            if bits:
                said.append(f"{name.upper()} {', '.join(bits)}")
        return f"{'; '.join(said)}."
