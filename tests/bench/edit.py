"""``python -m tests.bench.edit [FOLDER]``: from an edit until the page in view is painted right.

Each page is shown over ten years of runs; then one run and one block are edited, as a user does,
and the time is taken until the last paint that the edit caused, or the last answer of the store's
where the page shows nothing of it and stays as it was. Beside the wall time stands what
the window's own thread worked, which other programs disturb less. FOLDER keeps the store.
"""

from __future__ import annotations

import os
import statistics
import sys
import tempfile
import time
from collections.abc import Callable, Iterator
from dataclasses import replace
from functools import partial
from pathlib import Path

from PySide6.QtCore import QEvent, QObject, QTimer
from PySide6.QtWidgets import QApplication

from tercet.library import operations, planning
from tercet.library.library import Library
from tercet.store import queries
from tercet.ui.application import application
from tercet.ui.collector import Collector
from tercet.ui.look import look_of
from tercet.ui.pages import PAGES
from tercet.ui.window import MainWindow
from tests.bench.window import WAITING, Beat, made

#: Nothing was painted for so long, and no answer is out: the edit is shown. [s]
QUIET_S = 0.3
TIMES = 5
#: The run that is edited.
EDITED: list[int] = []


class Repaints(QObject):
    """Counts the window's rounds of painting."""

    def __init__(self, window: MainWindow) -> None:
        super().__init__()
        self.count = 0
        window.installEventFilter(self)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Count."""
        self.count += event.type() == QEvent.Type.UpdateRequest
        return False


def until_shown(
    window: MainWindow, repaints: Repaints, act: Callable[[], object]
) -> tuple[float, float]:
    """Act, and give wall time and the process's own time until all that it caused is shown [s]."""
    begin, begin_cpu, seen = time.perf_counter(), time.process_time(), repaints.count
    act()
    last = last_cpu = 0.0
    end = begin + QUIET_S
    while time.perf_counter() < end or window.refreshing or window.further.waiting:
        asked = window.refreshing or window.further.waiting
        QApplication.processEvents(WAITING)
        if repaints.count > seen or asked:
            seen, now = repaints.count, time.perf_counter()
            last, last_cpu, end = now - begin, time.process_time() - begin_cpu, now + QUIET_S
    return last, last_cpu


def edits(window: MainWindow, library: Library) -> Iterator[tuple[str, Callable[[int], object]]]:
    """What is edited, each another time for another number."""
    assert window.view is not None
    edited = next(run for run in window.view.sessions if run.id == EDITED[0])
    last = EDITED[0]
    yield "a run's effort", lambda k: window.acts.set_effort(last, k % 9 + 1)
    yield (
        "a run deleted, brought back",
        lambda k: window.acts.undo() if k % 2 else window.acts.do(operations.delete_runs, [last]),
    )
    block = next(b for b in library.call(queries.blocks) if b.start <= edited.day <= b.end)

    def aim(k: int) -> None:
        share = 0.80 + k % 9 / 100
        window.acts.do(planning.set_block, replace(block, easy_target=share))

    yield "a block's wanted share", aim


def measure(folder: Path) -> None:
    """Open the window and print every page's figures."""
    made(folder)
    app = application()
    app.setCursorFlashTime(0)
    library = Library(folder / "store")
    look_of(library.folder).apply()
    Collector(app)
    beat, shown = Beat(), []
    window = MainWindow(library)
    window.resize(1366, 768)
    window.season_shown.connect(shown.append)
    beat.longest(window.show)
    while not shown:
        beat.longest(lambda: None)
    waking = QTimer(window, interval=10)
    waking.start()
    repaints = Repaints(window)
    keys = ["season", "session", *(entry.key for entry in PAGES)]
    assert window.view is not None
    EDITED.append([run.id for run in window.view.sessions if run.sport == "running"][-4])
    window.season_page.sheet.select_session(EDITED[0])
    for key in sys.argv[2:] or keys:
        for name, edit in edits(window, library):
            if key == "session" and "deleted" in name:
                continue  # its page closes
            beat.longest(lambda key=key: window.show_view(key))
            times = range(TIMES * 2 + 2)
            taken = [until_shown(window, repaints, partial(edit, k)) for k in times][2:]
            wall, own = ([1000 * value for value in each] for each in zip(*taken, strict=True))
            middle = statistics.median(wall)
            print(
                f"{key:<12} {name:<28} {middle:6.0f} ms, longest {max(wall):6.0f} ms, "
                f"work {statistics.median(own):5.0f} ms"
                f"{'' if middle <= 100 else '   over 100'}",
                flush=True,
            )
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
