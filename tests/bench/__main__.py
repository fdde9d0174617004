"""``python -m tests.bench``: reading, judging, importing, the season, the start of the window."""

from __future__ import annotations

import gc
import os
import shutil
import sqlite3
import sys
import tempfile
import xml.parsers.expat
from collections.abc import Iterator
from pathlib import Path

import fitdecode

from tercet import formats, resources
from tercet.domain import Recording
from tercet.library import (
    figures,
    insight,
    middle,
    next_week,
    operations,
    reading,
    season,
    season_file,
    shape,
    standing,
    years,
)
from tercet.library.figures import spans
from tercet.library.library import Library
from tercet.store import queries
from tests.bench.review import review
from tests.bench.ten_years import fill
from tests.bench.timing import Figure, once, pair, process


def _fit_files() -> list[Path]:
    files = sorted(resources.samples().glob("*.fit"), key=lambda place: place.stat().st_size)
    return [place for place in files if place.stat().st_size > 5000]


def _decode_with_defaults(data: bytes) -> None:
    try:
        with fitdecode.FitReader(data) as reader:
            for frame in reader:
                if isinstance(frame, fitdecode.FitDataMessage):
                    list(frame.fields)
    except fitdecode.FitError:
        return


def read_and_judge() -> Iterator[Figure]:
    """Readers and the engine on the sample season's largest files."""
    fit = _fit_files()[-1].read_bytes()
    yield pair(
        "read a FIT file",
        lambda: formats.read_bytes(fit),
        "fitdecode's defaults",
        lambda: _decode_with_defaults(fit),
        wanted=0.56,
    )
    gpx = max(resources.samples().glob("*.gpx"), key=lambda place: place.stat().st_size)
    text = gpx.read_bytes()
    yield pair(
        "read a GPX file",
        lambda: formats.read_bytes(text),
        "bare expat, no values",
        lambda: xml.parsers.expat.ParserCreate().Parse(text, True),
    )
    found = formats.read_bytes(fit)
    assert isinstance(found, list)
    recording: Recording = found[0]
    entries = season_file.parse((resources.samples() / "season.toml").read_text("utf-8")).thresholds
    hours = recording.elapsed_s / 3600
    figure = pair(
        "judge that FIT file",
        lambda: reading.judge(recording, entries[0]),
        "reading it",
        lambda: formats.read_bytes(fit),
        times=9,
    )
    yield figure
    print(f"  = {1000 * figure.value_s / hours:.1f} ms an hour of running (wanted <= 25)")


def importing(folder: Path) -> Iterator[Figure]:
    """The sample season into an empty store, and again."""
    files = [place.read_bytes() for place in _fit_files()]
    only = folder / "fit"
    only.mkdir()
    for place in _fit_files():
        shutil.copy(place, only)
    shutil.copy(resources.samples() / "season.toml", only)
    floor = once(lambda: [_decode_with_defaults(data) for data in files])
    library = Library(folder / "store")
    first = once(lambda: library.take_in([only]))
    yield Figure(
        f"import {len(files)} FIT files, judged",
        "merely decoding them, one process",
        first,
        floor,
        first / floor,
        0.45,
    )
    again = once(lambda: library.take_in([only]))
    yield Figure("the same drop again", "the first time", again, first, again / first, 0.03)
    kept = sum(place.stat().st_size for place in (folder / "store").rglob("*") if place.is_file())
    given = sum(len(data) for data in files)
    print(f"  store: {kept / 1e6:.2f} MB for {given / 1e6:.2f} MB of originals")
    library.close()


def many_runs(folder: Path) -> Iterator[Figure]:
    """The season's numbers with ten years in the store."""
    made = fill(folder)
    db = sqlite3.connect(folder / "store" / "tercet.db")
    library = Library(folder / "store")

    def bare() -> None:
        db.execute("SELECT * FROM run LEFT JOIN judgement ON run_id = id").fetchall()

    def numbers() -> None:
        season.build_up(library.call(season.season))

    def every_figure() -> None:
        """Season, build-up, causes, classes, curves, what stands out, next week, years.

        Figures are read from the store each time, as by the first page that asks for them.
        """
        library.call(lambda store: figures._kept._held.pop(store, None))
        view = library.call(season.season)
        season.build_up(view)
        found = spans(view)
        kept = library.call(figures.read)
        for span in found:
            middle.totals(span, kept)
            shape.shapes(span)
            shape.drawn(span, kept, 1.25)
        last = found[-1]
        standing.stands_out(last, middle.middle(last, kept), found[0].runs, 2, {})
        next_week.next_week(view, found[0].runs, 2)
        pasts = years.pasts(view)
        years.differs(pasts[0], pasts[-1])
        years.years(view)

    number = library.call(queries.run_ids)[-1]
    said = iter(range(1, 1000))

    def edit() -> None:
        """One run edited, and what the pages in view then read."""
        library.call(operations.set_effort, number, next(said) % 10)
        view = library.call(season.season)
        season.build_up(view)
        library.call(insight.middle_page, view, "")

    gc.disable()  # as the window does: cycles are collected in its own thread, between events
    yield pair(f"season and build-up of {made} runs", numbers, "the bare rows", bare)
    figure = pair(f"every figure of {made} runs", every_figure, "the bare rows", bare)
    yield figure
    print(f"  = {1000 * figure.value_s:.0f} ms from the store to numbers (wanted <= 50)")
    figure = pair("one run edited, season and middle anew", edit, "the bare rows", bare)
    yield figure
    print(f"  = {1000 * figure.value_s:.0f} ms until there are numbers to draw (wanted <= 100)")
    gc.enable()
    library.close()
    db.close()


# Each process ends hard at the moment that is timed: how it would leave is not part of a start.
BARE = """
import os
from PySide6.QtWidgets import QApplication, QWidget
from PySide6.QtCore import QTimer
class Window(QWidget):
    def paintEvent(self, event):
        QTimer.singleShot(0, lambda: os._exit(0))
app = QApplication([]); w = Window(); w.resize(1366, 768); w.show(); app.exec()
"""
LOADED = "import pyqtgraph, pandas\n" + BARE
OURS = """
import os, sys
from pathlib import Path
from tercet import __main__, invocation, resources
from tercet.library.library import Library
from tercet.ui import application
from tercet.ui.look import look_of
from tercet.ui.window import MainWindow
def ended(*_):
    if sys.argv[3:]:
        window.close(); library.close()
    os._exit(0)
app = application.application()
library = Library(Path(sys.argv[1]))
look_of(library.folder).apply()
window = MainWindow(library)
getattr(window, sys.argv[2]).connect(ended)
window.show(); app.exec()
"""


def start(folder: Path) -> Iterator[Figure]:
    """Whole processes: the window with ten years in the store, until the sheet, until all of it."""
    # Installed programs have their modules compiled; so have these after the first start of each.
    environment = {
        **os.environ,
        "QT_QPA_PLATFORM": "offscreen",
        "PYTHONPYCACHEPREFIX": str(folder / "compiled"),
    }
    environment.pop("PYTHONDONTWRITEBYTECODE", None)
    ours = [sys.executable, "-c", OURS, str(folder / "store")]
    # Once to the end: closing keeps what the next start shows first.
    process([*ours, "season_shown", "close"], environment)()
    yield pair(
        "start to the first picture of the season sheet",
        process([*ours, "sheet_shown"], environment),
        "a bare PySide6 window",
        process([sys.executable, "-c", BARE], environment),
        times=9,
        wanted=2.5,
    )
    yield pair(
        "start until everything can be used",
        process([*ours, "season_shown"], environment),
        "an empty window that loaded pyqtgraph and pandas",
        process([sys.executable, "-c", LOADED], environment),
        times=9,
        wanted=1.6,
    )


def main() -> None:
    """Print every figure."""
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        parts = (
            read_and_judge(),
            importing(folder),
            review(folder),
            many_runs(folder),
            start(folder),
        )
        for part in parts:
            for figure in part:
                print(figure.line(), flush=True)


if __name__ == "__main__":
    main()
