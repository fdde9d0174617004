"""``python -m tests.bench.review_window [FOLDER]``: the review of 30 weeks, from click to paint.

Each of a few sittings is a process of its own, so that a first click pays for what is loaded and
built then. FOLDER keeps the store for another run.
"""

from __future__ import annotations

import os
import sqlite3
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from dataclasses import replace
from datetime import timedelta
from pathlib import Path

from PySide6.QtCore import QEventLoop, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from tercet import resources
from tercet.library import operations
from tercet.library.library import Library
from tercet.store import queries
from tercet.ui.application import application
from tercet.ui.review.organiser import Organiser
from tercet.ui.review.page_view import PageView
from tercet.ui.window import MainWindow
from tests.bench.window import Painted, plain_fill

WEEKS, SITTINGS, TURNS = 30, 5, 3
FIRST_S, TURN_S = 0.3, 0.1


def fill(folder: Path) -> None:
    """The sample season, its first weeks copied to before its first block until it has 30."""
    library = Library(folder / "store")
    library.take_in([resources.samples()])
    blocks, races = library.call(queries.blocks), library.call(queries.races)
    first, last = min(b.start for b in blocks), max(b.end for b in blocks)
    more = WEEKS - ((last - first).days + 1) // 7
    start = first - timedelta(weeks=more)
    early = replace(blocks[0], start=start, end=first - timedelta(days=1), name="Early", id=None)
    library.call(operations.set_plan, [early, *blocks], races)
    library.close()
    db = sqlite3.connect(folder / "store" / "tercet.db")
    before = (first + timedelta(weeks=more)).isoformat()
    tables = {
        name: [row[1] for row in db.execute(f"PRAGMA table_info({name})")]
        for name in ("run", "judgement")
    }
    for (old,) in db.execute("SELECT id FROM run WHERE day < ?", (before,)).fetchall():
        found = db.execute("SELECT * FROM run WHERE id = ?", (old,)).fetchone()
        row = dict(zip(tables["run"], found, strict=True))
        row |= {"id": None, "start_utc": row["start_utc"] - more * 7 * 86_400}
        (row["day"],) = db.execute(
            "SELECT date(?, ?)", (row["day"], f"-{7 * more} days")
        ).fetchone()
        marks = ", ".join("?" for _ in row)
        new = db.execute(f"INSERT INTO run VALUES ({marks})", list(row.values())).lastrowid
        rest = ", ".join(name for name in tables["judgement"] if name != "run_id")
        db.execute(
            f"INSERT INTO judgement (run_id, {rest}) "
            f"SELECT ?, {rest} FROM judgement WHERE run_id = ?",
            (new, old),
        )
    db.commit()
    db.close()


def until_painted(act: Callable[[], object], view: Callable[[], PageView | None]) -> float:
    """Time from an act to the end of the paint of another page [s]."""
    begin, made = time.perf_counter(), view()
    drawn = made._drawn.cacheKey() if made is not None else 0
    act()
    while (made := view()) is None or not made.marks or made._drawn.cacheKey() == drawn:
        QApplication.processEvents(QEventLoop.ProcessEventsFlag.WaitForMoreEvents)
    return time.perf_counter() - begin


def sitting(folder: Path) -> None:
    """One window: the first click on the review, every page turned, and the click again."""
    app = application()
    floor = plain_fill()
    library = Library(folder / "store")
    window, shown = MainWindow(library), []
    window.resize(1366, 768)
    window.season_shown.connect(shown.append)
    window.show()
    while not shown:
        app.processEvents(QEventLoop.ProcessEventsFlag.WaitForMoreEvents)
    QTest.qWait(500)
    click = window.bar._views["review"]

    def view() -> PageView | None:
        page = window.further.current
        # Pages are built in idle time as well; this one counts once it is to be seen.
        here = isinstance(page, Organiser) and page.isVisible() and page.review is not None
        return page.page if here else None

    first = until_painted(lambda: QTest.mouseClick(click, Qt.MouseButton.LeftButton), view)
    QTest.qWait(300)
    page = window.further.current
    count = len(page.review.pages)
    turns = [
        until_painted(lambda k=key: QTest.keyClick(page.list, k), view)
        for key in (Qt.Key.Key_Down, Qt.Key.Key_Up) * TURNS
        for _ in range(count - 1)
    ]
    page.choose_in_list(page.review.pages[0].key)
    QTest.keyClick(page, Qt.Key.Key_F5)
    QTest.qWait(300)
    wall = page.show_.wall
    on_wall = wall.findChild(PageView)
    large = [
        until_painted(lambda k=key: QTest.keyClick(wall, k), lambda: on_wall)
        for key in (Qt.Key.Key_Right, Qt.Key.Key_Left) * TURNS
        for _ in range(len(page.review.shown) - 1)
    ]
    page.show_.end()
    window.show_view("season")
    QTest.qWait(300)
    painted, begin = Painted(page.page), time.perf_counter()
    QTest.mouseClick(click, Qt.MouseButton.LeftButton)
    while not painted.count:
        app.processEvents(QEventLoop.ProcessEventsFlag.WaitForMoreEvents)
    again = time.perf_counter() - begin
    weeks = sum(len(block.weeks) for block in window.view.blocks)
    print(
        f"{page.review.name}, {weeks} weeks, {count} pages: first {1000 * first:.0f} ms, again "
        f"{1000 * again:.0f} ms; turn {told(turns)}; presented {told(large)}; "
        f"plain fill {1000 * floor:.1f} ms"
    )
    print("figures", first, max(turns), max(large), flush=True)
    window.close()
    library.close()


def told(seconds: list[float]) -> str:
    """Median and longest."""
    return f"{1000 * statistics.median(seconds):.0f} ms, longest {1000 * max(seconds):.0f} ms"


def measure(folder: Path) -> None:
    """Sit down a few times, and hold the medians against what is wanted."""
    if not (folder / "store" / "tercet.db").exists():
        fill(folder)
    print(f"load {os.getloadavg()[0]:.1f}")
    figures = []
    for _ in range(SITTINGS):
        asked = [sys.executable, "-m", "tests.bench.review_window", str(folder), "sit"]
        out = subprocess.run(asked, check=True, capture_output=True, text=True).stdout
        line, last = out.strip().splitlines()[-2:]
        print(line, flush=True)
        figures.append([float(part) for part in last.split()[1:]])
    for name, values, wanted in zip(
        ("first page", "longest turn", "longest turn, presented"),
        zip(*figures, strict=True),
        (FIRST_S, TURN_S, TURN_S),
        strict=True,
    ):
        print(f"{name}: {1000 * statistics.median(values):.0f} ms (wanted <= {1000 * wanted:.0f})")


def main() -> None:
    """Measure in a folder given, or in one that is deleted again."""
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    if sys.argv[2:] == ["sit"]:
        sitting(Path(sys.argv[1]))
    elif sys.argv[1:]:
        measure(Path(sys.argv[1]))
    else:
        with tempfile.TemporaryDirectory() as name:
            measure(Path(name))


if __name__ == "__main__":
    main()
