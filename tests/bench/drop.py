"""``python -m tests.bench.drop [FOLDER] [RUNS]``: years of one-hour runs dropped on a real window.

Time beside fitdecode's defaults over the same files in one process, the same drop again, gaps of
the event loop, memory of all processes together, and the size of the store. Without a folder of
:mod:`tests.bench.hours` the runs are written first.
"""

from __future__ import annotations

import gc
import os
import sys
import tempfile
import time
from itertools import pairwise
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from PySide6.QtCore import QEventLoop, Qt, QTimer

from tercet.library.importing import Report
from tercet.library.library import Library
from tercet.ui import application, theme
from tercet.ui.window import MainWindow
from tests.bench import hours
from tests.bench.__main__ import _decode_with_defaults
from tests.bench.family import Family
from tests.bench.timing import Figure, once

#: What is asked: share of the decoding, of the first drop, a gap [s], memory [MB].
WANTED, AGAIN, GAP_S, MEMORY_MB = 0.45, 0.03, 0.05, 600
#: Store: so much of the originals, and so many bytes for an hour of running.
OF_ORIGINALS, AN_HOUR = 1.15, 40_000


class _Drop:
    """Drops a folder on a window and listens to its event loop meanwhile."""

    def __init__(self, window: MainWindow) -> None:
        self._window, self._beats = window, list[tuple[float, float]]()
        self._timer = QTimer(window)
        self._timer.setTimerType(Qt.TimerType.PreciseTimer)
        self._timer.setInterval(2)
        self._timer.timeout.connect(lambda: self._beats.append(_now()))

    def run(self, folder: Path) -> tuple[Report, list[tuple[float, float, float]]]:
        """The report, and the longest gaps: how long, at work for how long, when since the drop."""
        loop, reports = QEventLoop(), list[Report]()
        self._window.imports.ended.connect(reports.append)
        self._window.imports.ended.connect(lambda _: loop.quit())
        self._beats = [_now()]
        self._timer.start()
        self._window.imports.take_in([folder])
        loop.exec()
        QTimer.singleShot(1500, loop.quit)  # what the end of an import still draws
        loop.exec()
        self._timer.stop()
        began = self._beats[0][0]
        gaps = sorted(
            ((b - a, work - done, a - began) for (a, done), (b, work) in pairwise(self._beats)),
            reverse=True,
        )
        return reports[-1], gaps


def _now() -> tuple[float, float]:
    """The moment, and how long this process was at work until it: a busy machine lets it wait."""
    return time.perf_counter(), time.process_time()


def _window(library: Library) -> MainWindow:
    app = application.application()
    theme.apply(app, False)
    gc.disable()  # as the window does
    window, loop = MainWindow(library), QEventLoop()
    window.resize(1366, 768)
    window.season_shown.connect(loop.quit)
    window.show()
    loop.exec()
    return window


def _size(folder: Path) -> int:
    return sum(place.stat().st_size for place in folder.rglob("*") if place.is_file())


def main(given: Path | None, runs: int) -> None:
    """Print every figure."""
    with tempfile.TemporaryDirectory() as name:
        folder = given or Path(name) / "runs"
        if given is None:
            folder.mkdir()
            list(hours.write(folder, runs))
        print(f"load before: {os.getloadavg()[0]:.2f}")
        files = sorted(folder.glob("*.fit"))[:runs]
        only = Path(name) / "drop"
        only.mkdir()
        for place in files:
            (only / place.name).write_bytes(place.read_bytes())
        # A third before and after, so that a machine that drifts does not spoil the ratio.
        before = once(lambda: [_decode_with_defaults(p.read_bytes()) for p in files[::2]])
        library = Library(Path(name) / "store")
        window = _window(library)
        drop = _Drop(window)
        with Family() as family:
            began = time.perf_counter()
            report, gaps = drop.run(only)
            first = time.perf_counter() - began - 1.5
        began = time.perf_counter()
        again, more = drop.run(only)
        second = time.perf_counter() - began - 1.5
        after = once(lambda: [_decode_with_defaults(p.read_bytes()) for p in files[1::2]])
        floor = before + after
        print(f"  {report.words}; again: {again.words}")
        what = f"{len(files)} hours dropped, judged"
        print(Figure(what, "decoding by defaults", first, floor, first / floor, WANTED).line())
        print(Figure("the same again", "the first", second, first, second / first, AGAIN).line())
        for what, found in (("first", gaps), ("again", more)):
            longest = ", ".join(
                f"{1000 * gap:.0f} ({1000 * work:.0f} at work) at {at:.1f} s"
                for gap, work, at in found[:6]
            )
            print(f"  event loop, {what}: [ms] {longest}  (wanted <= {1000 * GAP_S:.0f})")
        print(f"  memory of all processes: {family.peak_mb:.0f} MB  (wanted <= {MEMORY_MB})")
        window.close()
        library.close()
        originals, kept = _size(only), _size(Path(name) / "store")
        most = OF_ORIGINALS * originals + AN_HOUR * len(files)
        print(f"  store: {kept / 1e6:.1f} MB  (wanted <= {most / 1e6:.1f})")
        print(f"load after: {os.getloadavg()[0]:.2f}")


if __name__ == "__main__":
    main(
        Path(sys.argv[1]) if sys.argv[1:] else None,
        int(sys.argv[2]) if sys.argv[2:] else hours.RUNS,
    )
