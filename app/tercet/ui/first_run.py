"""The first evening: ways to begin in an empty window, and the offer of surer thresholds."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QButtonGroup,
    QFrame,
    QHBoxLayout,
    QRadioButton,
    QVBoxLayout,
    QWidget,
)

from tercet.domain import DatedThresholds
from tercet.ui import theme, words
from tercet.ui.widgets import DropZone, Label, Pane, Rule, button

#: Text sizes offered at first sight, in per cent.
SIZES = (100, 115, 130, 150)


class EmptyPage(Pane):
    """What the window shows before anything was taken in."""

    choose_asked = Signal()
    folder_asked = Signal()
    example_asked = Signal()
    plan_asked = Signal()
    size_chosen = Signal(int)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        outer = QVBoxLayout(self)
        outer.setContentsMargins(32, 24, 32, 24)
        outer.addStretch(2)
        title = Label("A season starts with what you have run", "page_title")
        title.setAlignment(Qt.AlignmentFlag.AlignHCenter)
        outer.addWidget(title)
        lead = Label(
            "Every second of every run is judged easy, moderate or hard, against your own two "
            "thresholds. Three ways to begin:",
            "body",
            "text_2",
        )
        lead.setAlignment(Qt.AlignmentFlag.AlignHCenter)
        lead.setWordWrap(True)
        outer.addWidget(lead)
        outer.addSpacing(24)

        columns = QHBoxLayout()
        columns.setSpacing(24)
        columns.addStretch(1)
        self.zone = DropZone()
        self.choose = button("Choose files…", primary=True)
        self.choose.clicked.connect(self.choose_asked)
        self.folder = button("Choose a folder…")
        self.folder.clicked.connect(self.folder_asked)
        self.example = button("Open the example")
        self.example.clicked.connect(self.example_asked)
        self.plan = button("Races and blocks…")
        self.plan.clicked.connect(self.plan_asked)
        columns.addWidget(
            self._column(
                self.zone,
                "Recordings",
                "FIT, TCX or GPX files from a watch or an older program. Drop them anywhere on "
                "this window. They are copied; the originals are not touched.",
                self.choose,
                self.folder,
            ),
            4,
        )
        columns.addWidget(
            self._column(
                QFrame(),
                "The example season",
                "24 weeks of an invented runner, to look round in. It stays apart from your own "
                "and goes when you close it.",
                self.example,
            ),
            4,
        )
        columns.addWidget(
            self._column(
                QFrame(),
                "A race to come",
                "Name the race and the blocks before it now; the runs find their places later.",
                self.plan,
            ),
            4,
        )
        columns.addStretch(1)
        outer.addLayout(columns)
        outer.addSpacing(24)
        outer.addWidget(Rule())
        sizes = QHBoxLayout()
        sizes.addStretch()
        sizes.addWidget(Label("Text too small?", "body_bold"))
        self.sizes = QButtonGroup(self)
        now = round(theme.current().scale * 100)
        for size in SIZES:
            choice = QRadioButton(f"{size} %")
            choice.setAccessibleName(f"Text size {size} per cent")
            choice.setChecked(size == now)
            self.sizes.addButton(choice, size)
            sizes.addWidget(choice)
        self.sizes.idClicked.connect(self.size_chosen)
        sizes.addStretch()
        outer.addSpacing(8)
        outer.addLayout(sizes)
        outer.addStretch(3)

    def _column(self, frame: QFrame, title: str, text: str, *buttons: QWidget) -> QFrame:
        frame.setMinimumWidth(240)
        frame.setMaximumWidth(420)
        inside = QVBoxLayout(frame)
        inside.setContentsMargins(20, 16, 20, 16)
        inside.addWidget(Label(title, "block"))
        body = Label(text, "body", "text_2", wrap=True)
        body.setAlignment(Qt.AlignmentFlag.AlignTop)
        inside.addWidget(body, 1)
        inside.addSpacing(8)
        line = QHBoxLayout()
        for made in buttons:
            line.addWidget(made)
        line.addStretch()
        inside.addLayout(line)
        return frame


def about_lines(entry: DatedThresholds, units: words.Units = "km") -> str:
    """Both lines of an estimate with their intervals, in words."""
    values, width = entry.values, entry.interval
    parts = []
    for name, speed, heart in (
        ("LT1", "lt1_speed", "lt1_hr"),
        ("LT2", "lt2_speed", "lt2_hr"),
    ):
        said = []
        pace = getattr(values, speed)
        if pace is not None:
            half = width.get(speed, 0.0)
            low = words.bare_pace(pace + half, units)
            high = words.bare_pace(max(pace - half, 0.5), units)
            said.append(f"about {words.pace(pace, units)} ({low} to {high})")
        beats = getattr(values, heart)
        if beats is not None:
            half = width.get(heart, 0.0)
            said.append(f"about {beats:.0f} /min ({beats - half:.0f} to {beats + half:.0f})")
        if said:
            parts.append(f"{name} {', '.join(said)}")
    return ".  ".join(parts) + "."


class ThresholdStrip(QFrame):
    """Over the sheet after the first import: two estimated lines and three ways to surer ones."""

    race_asked = Signal()
    maximum_asked = Signal()
    typed_asked = Signal()
    leave_asked = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName("Estimated thresholds")
        column = QVBoxLayout(self)
        column.setContentsMargins(14, 8, 14, 10)
        column.setSpacing(4)
        self.title = Label("Shaded by an estimate from your runs", "body_bold")
        self.lines = Label("", "small", "text_2", wrap=True)
        column.addWidget(self.title)
        column.addWidget(self.lines)
        buttons = QHBoxLayout()
        buttons.setSpacing(8)
        self.race = button("A recent race")
        self.maximum = button("Highest heart rate or age")
        self.typed = button("The thresholds themselves")
        self.leave = button("Leave them")
        for made, signal in (
            (self.race, self.race_asked),
            (self.maximum, self.maximum_asked),
            (self.typed, self.typed_asked),
            (self.leave, self.leave_asked),
        ):
            made.clicked.connect(signal)
            buttons.addWidget(made)
        buttons.addStretch()
        column.addLayout(buttons)

    def show_estimate(self, entry: DatedThresholds, units: words.Units = "km") -> None:
        """Show an estimate."""
        self.lines.setText(f"{about_lines(entry, units)}  From: {entry.source}.")
        self.show()
