"""A menu button that chooses a stretch of the season: the whole of it, or one block."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QComboBox, QSizePolicy

from tercet.language import mark, tr
from tercet.library.figures import Span


class SpanChooser(QComboBox):
    """Lists stretches, the whole season first; ``chosen`` gives a key when a user chooses."""

    chosen = Signal(str)

    def __init__(self, name: str = mark("Stretch of the season")) -> None:
        super().__init__()
        self.setAccessibleName(tr(name))
        self.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToContents)
        self.setSizePolicy(QSizePolicy.Policy.Maximum, QSizePolicy.Policy.Fixed)
        self.activated.connect(lambda place: self.chosen.emit(str(self.itemData(place))))

    def show_spans(self, spans: Sequence[Span], shown: Span | None) -> None:
        """List the stretches, latest block first, and mark the one in view."""
        ordered = [*spans[:1], *reversed(spans[1:])]
        often = Counter(span.name for span in spans)
        names = [span.name if often[span.name] == 1 else f"{span.name} {span.start.year}"
                 for span in ordered]  # fmt: skip
        labels = [tr("{name} block", name=name) if span.block_id is not None else name
                  for name, span in zip(names, ordered, strict=True)]  # fmt: skip
        held = [self.itemData(k) for k in range(self.count())]
        if (
            held != [span.key for span in ordered]
            or [self.itemText(k) for k in range(self.count())] != labels
        ):
            self.clear()
            for span, label in zip(ordered, labels, strict=True):
                self.addItem(label, span.key)
        if shown is not None:
            self.setCurrentIndex(self.findData(shown.key))
        self.setEnabled(bool(spans))
        self.setVisible(bool(spans))
