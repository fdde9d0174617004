"""``python -m tests.bench.window [FOLDER]``: frames, gaps and memory of the window over ten years.

A frame is the time from an event to the end of the paint that it caused; a gap is the longest
time in which the event loop could not answer. Both stand beside a floor of the same run: the
window's size filled with one colour. FOLDER keeps the store for another run.
"""

from __future__ import annotations

import gc
import os
import statistics
import sys
import tempfile
import time
from collections.abc import Callable, Iterator
from dataclasses import replace
from datetime import UTC, datetime
from pathlib import Path

from PySide6.QtCore import QEvent, QEventLoop, QObject, QPoint, QPointF, Qt, QTimer
from PySide6.QtGui import QPainter, QPaintEvent, QWheelEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QDialog, QWidget

from tercet import resources
from tercet.library import season
from tercet.library.library import Library
from tercet.store import queries
from tercet.ui.application import application
from tercet.ui.collector import Collector
from tercet.ui.look import look_of
from tercet.ui.pages import PAGES
from tercet.ui.window import MainWindow
from tests.bench.ten_years import fill
from tests.simulator.noise import stream
from tests.simulator.record import simulate
from tests.simulator.runner import draw_runner
from tests.simulator.sessions import Step, prescribe
from tests.simulator.write_fit import fit_bytes

FOUR_HOURS_S = 4 * 3600.0
#: Nothing happened for so long: what was asked for is done. [s]
REST_S = 0.25
#: Sleep until there is an event, as the program does: a busy loop would keep other threads back.
WAITING = QEventLoop.ProcessEventsFlag.WaitForMoreEvents
DIALOGS = ("Blocks and races…", "Corrections…", "Glossary", "Preferences…")


def four_hours(folder: Path) -> Path:
    """One run of four hours at 1 Hz, as a FIT file."""
    session = prescribe("long", stream(7, 1))
    session = replace(session, steps=[*session.steps, Step(seconds=FOUR_HOURS_S)])
    start = datetime(2026, 8, 30, 6, 0, tzinfo=UTC)
    run = simulate(draw_runner(stream(7, 2)), session, 7, start=start, sampling="1s")
    place = folder / "four-hours.fit"
    place.write_bytes(fit_bytes(run))
    return place


def made(folder: Path) -> int:
    """Fill a store, unless it is there; gives the number of the run of four hours."""
    note = folder / "four-hours.txt"
    if not note.exists():
        library = Library(folder / "store")
        library.take_in([resources.samples()])
        library.close()
        fill(folder)
        library = Library(folder / "store")
        before = set(library.call(queries.run_ids))
        library.take_in([four_hours(folder)])
        (new,) = set(library.call(queries.run_ids)) - before
        library.close()
        note.write_text(str(new))
    return int(note.read_text())


class Beat(QObject):
    """Beats as often as the event loop lets it; between two beats lies a gap."""

    def __init__(self) -> None:
        super().__init__()
        self.gaps: list[float] = []
        self._last = 0.0
        self._timer = QTimer(self, interval=1)
        self._timer.timeout.connect(self._tell)

    def _tell(self) -> None:
        now = time.perf_counter()
        if self._last:
            self.gaps.append(now - self._last)
        self._last = now

    def longest(self, act: Callable[[], object]) -> float:
        """Act from the event loop, and give the longest gap until all is at rest [s]."""
        self.gaps, self._last = [], 0.0
        acted: list[object] = []
        QTimer.singleShot(5, lambda: acted.append(act()))
        self._timer.start()
        end, seen = time.perf_counter() + REST_S, 0
        while time.perf_counter() < end or not acted:
            QApplication.processEvents(WAITING)
            if any(gap > 0.005 for gap in self.gaps[seen:]) or not seen:
                end = time.perf_counter() + REST_S
            seen = len(self.gaps)
        self._timer.stop()
        return max(self.gaps, default=0.0)


class Painted(QObject):
    """Counts the paints of a widget."""

    def __init__(self, widget: QWidget) -> None:
        super().__init__()
        self.count = 0
        widget.installEventFilter(self)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Count."""
        self.count += event.type() == QEvent.Type.Paint
        return False


def frame(act: Callable[[], object], painted: Painted) -> float:
    """Time from an event to the end of the paint that it caused; 0 if it caused none [s]."""
    before, begin = painted.count, time.perf_counter()
    act()
    QApplication.processEvents()
    return time.perf_counter() - begin if painted.count > before else 0.0


def frames(name: str, acts: list[Callable[[], object]], painted: Painted, floor: float) -> None:
    """Time each act's frame and print the 95th percentile."""
    taken = [1000 * value for act in acts if (value := frame(act, painted))]
    taken.sort()
    at_95 = taken[min(len(taken) - 1, int(0.95 * len(taken)))]
    print(
        f"{name:<34} {statistics.median(taken):6.1f} ms, 95 % {at_95:6.1f} ms, longest "
        f"{taken[-1]:6.1f} ms of {len(taken)}   {at_95 / (1000 * floor):5.1f} x a plain fill",
        flush=True,
    )


class Plain(QWidget):
    """The floor: one colour, as large as the window."""

    def paintEvent(self, event: QPaintEvent) -> None:
        """Fill."""
        painter = QPainter(self)
        painter.fillRect(self.rect(), Qt.GlobalColor.lightGray)
        painter.end()


def plain_fill() -> float:
    """A plain fill of the window's size, event to end of paint [s]."""
    widget = Plain()
    widget.resize(1366, 768)
    widget.show()
    QTest.qWaitForWindowExposed(widget)
    painted = Painted(widget)
    return statistics.median(frame(widget.update, painted) for _ in range(21))


def wheel(widget: QWidget, delta: int, keys: Qt.KeyboardModifier) -> None:
    """Turn the wheel over the middle of a widget."""
    middle = QPointF(widget.rect().center())
    event = QWheelEvent(
        middle,
        QPointF(widget.mapToGlobal(widget.rect().center())),
        QPoint(0, 0),
        QPoint(0, delta),
        Qt.MouseButton.NoButton,
        keys,
        Qt.ScrollPhase.NoScrollPhase,
        False,
    )
    QApplication.sendEvent(widget, event)


def rows(window: MainWindow) -> Iterator[tuple[str, Callable[[], object]]]:
    """Everything whose gap is measured, in the order of a sitting."""
    yield "open the run of four hours", lambda: window.sessions.open(FOUR[0])
    yield "the next run", lambda: window.sessions.step(-1)
    yield "back to the season", lambda: window.show_view("season")
    for entry in PAGES:
        yield f"{entry.title}, first", lambda key=entry.key: window.show_view(key)
        yield "  back to the season", lambda: window.show_view("season")
        yield f"  {entry.title}, again", lambda key=entry.key: window.show_view(key)
    window.show_view("season")
    actions = {action.text(): action for action in window.actions()}
    for name in DIALOGS:
        yield f"dialog {name}", actions[name].trigger
        yield (
            "  and closed",
            lambda: [
                dialog.reject() for dialog in window.findChildren(QDialog) if dialog.isVisible()
            ],
        )
    sheet = window.season_page.sheet
    yield "an arrow key on the sheet", lambda: QTest.keyClick(sheet, Qt.Key.Key_Left)
    yield "today", lambda: QTest.keyClick(sheet, Qt.Key.Key_T)
    yield "search begun", lambda: window.season_page.search.begin()
    yield "theme to dark", lambda: window.look.choose(name="dark")
    yield "theme to light", lambda: window.look.choose(name="light")
    yield "text to 130 %", lambda: window.look.choose(size=130)
    yield "text to 100 %", lambda: window.look.choose(size=100)
    yield "units to miles", lambda: (window.look.choose(units="miles"), window.refresh())
    yield "units to kilometres", lambda: (window.look.choose(units="km"), window.refresh())


FOUR: list[int] = []


def memory() -> str:
    """Resident and proportional memory of this process [MB]."""
    lines = Path("/proc/self/smaps_rollup").read_text().splitlines()
    kept = {line.split(":")[0]: int(line.split()[1]) for line in lines[1:] if "kB" in line}
    return f"RSS {kept['Rss'] / 1024:.0f} MB, PSS {kept['Pss'] / 1024:.0f} MB"


def measure(folder: Path) -> None:
    """Open the window and print every figure."""
    FOUR.append(made(folder))
    app = application()
    floor = plain_fill()
    print(f"load {os.getloadavg()[0]:.1f}; a plain fill of 1366 x 768: {1000 * floor:.2f} ms")
    library = Library(folder / "store")
    look_of(library.folder).apply()
    Collector(app)
    beat, shown = Beat(), []
    window = MainWindow(library)
    window.resize(1366, 768)
    window.season_shown.connect(shown.append)
    gap = beat.longest(window.show)
    while not shown:
        gap = max(gap, beat.longest(lambda: None))
    print(f"gap at the start, all built: {1000 * gap:.0f} ms; {memory()} (wanted <= 350)")
    window.show_view("season")  # a store that is measured again opens where it was left
    app.processEvents()
    sheet = window.season_page.sheet
    painted = Painted(sheet.viewport())
    still, control = Qt.KeyboardModifier.NoModifier, Qt.KeyboardModifier.ControlModifier
    port = sheet.viewport()
    frames("scroll", [lambda: wheel(port, 120, still)] * 200, painted, floor)
    steps = [120, 120, 120, -120, -120, -120, -120, -120, 120, 120] * 6
    frames("zoom", [lambda d=d: wheel(port, d, control) for d in steps], painted, floor)
    sheet.zoom(0)
    charts = Painted(window.season_page.build_up.chart.viewport())
    view = window.view
    assert view is not None
    chart = window.season_page.build_up.chart
    sums = {unit: season.build_up(view, unit) for unit in ("time", "metres")}
    acts = [
        lambda u=u: chart.set_data(sums[u], view.today, view.races, u)
        for u in ("metres", "time") * 8
    ]
    frames("chart, other blocks and unit", acts, charts, floor)
    pane, days = window.season_page.build_up, [block.start for block in view.blocks][-20:]
    acts = [lambda d=d: pane.chart.mark_week(d) for d in days]
    frames("chart, another week marked", acts, charts, floor)
    detail_s = []
    for _ in range(5):
        begin = time.perf_counter()
        window.sessions.open(FOUR[0])
        page = Painted(window.session_page.panel.chart.viewport())
        while not page.count:
            app.processEvents(WAITING)
        detail_s.append(time.perf_counter() - begin)
        window.show_view("season")
        app.processEvents()
    bare = time.perf_counter()
    library.call(season.session_detail, FOUR[0])
    bare = time.perf_counter() - bare
    first, again = 1000 * detail_s[0], 1000 * statistics.median(detail_s[1:])
    print(
        f"open 4 h at 1 Hz, first {first:.0f} ms, again {again:.0f} ms (wanted <= 150); "
        f"{again / 1000 / bare:.1f} x reading it from the store ({1000 * bare:.0f} ms)"
    )
    while not gc.get_freeze_count():  # the further pages are being loaded
        beat.longest(lambda: None)
    for name, act in rows(window):
        gap = 1000 * beat.longest(act)
        print(f"gap {name:<40} {gap:6.0f} ms{'' if gap <= 50 else '   over 50'}", flush=True)
    print(memory())
    window.close()
    library.close()


def main() -> None:
    """Measure in a folder given, or in one that is deleted again."""
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    if len(sys.argv) > 1:
        folder = Path(sys.argv[1])
        folder.mkdir(parents=True, exist_ok=True)
        measure(folder)
        return
    with tempfile.TemporaryDirectory() as name:
        measure(Path(name))


if __name__ == "__main__":
    main()
