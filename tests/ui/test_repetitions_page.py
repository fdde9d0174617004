"""Repetitions by hand: the book's cells and remarks, the bench's fields, planning a set."""

from __future__ import annotations

import json
import time
from collections.abc import Callable, Iterator
from dataclasses import asdict
from datetime import date, timedelta

import pytest
from PySide6.QtCore import Qt

from tercet import resources
from tercet.domain import Block
from tercet.engine.judgement import Repetition
from tercet.engine.repetition_book import LONG, Set
from tercet.engine.scale import Shade
from tercet.formats.paper import parse_session
from tercet.library import operations, season
from tercet.library.library import Library
from tercet.library.repetition_book import BookSet, book
from tercet.store import plan_queries
from tercet.ui.bench_set import Sketch
from tercet.ui.book_view import set_words
from tercet.ui.repetitions_page import RepetitionsPage


@pytest.fixture
def page(qtbot, open_window: Callable, library: Library) -> Iterator[RepetitionsPage]:
    """The page over all sample runs of two weeks and their season."""
    wanted = ("season.tom", *(f"2026-05-{day}" for day in (11, 12, 13, 14)), "2026-07-14")
    library.take_in([p for p in resources.samples().iterdir() if p.name[:10] in wanted])
    window = open_window()
    window.resize(1366, 768)
    window.show_view("repetitions")
    found = window.further.current
    assert isinstance(found, RepetitionsPage)
    qtbot.waitUntil(lambda: bool(found.book.cells()), timeout=10_000)
    yield found


def test_cells_are_stepped_through_and_opened(qtbot, page) -> None:
    page.book.setFocus()
    qtbot.keyClick(page.book, Qt.Key.Key_Down)
    assert "\N{MULTIPLICATION SIGN}" in page.said.text()
    assert "uneven" in page.said.text() and "recovery" in page.said.text()
    with qtbot.waitSignal(page.session_asked, timeout=5_000):
        qtbot.keyClick(page.book, Qt.Key.Key_Return)


def test_the_bench_compares_and_redraws_quickly(qtbot, page) -> None:
    short, long = page.shorter, page.longer
    assert short.predicted is not None and long.predicted is not None
    assert short.predicted.near_s < long.predicted.near_s
    assert short.predicted.highest_heart_rate < long.predicted.highest_heart_rate
    assert page.closing.text().startswith("Same metres, same pace.")
    before = long.predicted.near_s
    long.length.setFocus()
    long.length.selectAll()
    begun = time.perf_counter()
    qtbot.keyClicks(long.length, "600 m")
    took = time.perf_counter() - begun
    assert long.predicted.near_s < before
    assert took < 0.5  # five keys, each redrawn; measured alone each is under 50 ms
    long.length.setText("")
    qtbot.keyClicks(long.length, "far")
    assert long.length.property("wrong")
    assert long.session.text() == "Give a length such as 200 m, 1000 m or 3:00."
    long.length.selectAll()
    qtbot.keyClicks(long.length, "1 km")
    assert long.session.text().startswith("session ")


def test_the_same_metres_are_split_and_planned(qtbot, page, library) -> None:
    page.shorter.put(Sketch(10, 400.0, None, 4.0, 60.0, "jog"))
    qtbot.mouseClick(page.split_shorter, Qt.MouseButton.LeftButton)
    assert (page.longer.count.text(), page.longer.length.text()) == ("20", "200 m")
    action = page.plan.menu().actions()[0].menu().actions()[1]
    action.trigger()
    qtbot.waitUntil(lambda: bool(library.call(plan_queries.planned)), timeout=5_000)
    entry = library.call(plan_queries.planned)[0]
    assert entry.notation == "15 min easy, 10 x 400 m @ 4:10/km / 60 s jog, 10 min easy"
    assert not parse_session(entry.notation).unclear


@pytest.mark.parametrize("how", ["jog", "walk", "stand"])
def test_every_sketch_is_understood_as_written(how: str) -> None:
    for sketch in (
        Sketch(15, 200.0, None, 5.0, 60.0, how),
        Sketch(6, None, 180.0, 4.4, 95.0, how),
        Sketch(3, 1600.0, None, 4.2, 0.0, how),
    ):
        session = parse_session(sketch.notation)
        assert not session.unclear
        assert session.pieces[0].count == sketch.count


def test_remarks_on_long_ones_in_base_and_all_on_one_day(library) -> None:
    library.take_in([resources.samples() / "2026-04-14-1843.fit"])
    view = library.call(season.season)
    run = view.sessions[0]
    reps = [Repetition(60.0 * k, 200.0, 1000.0, 5.0, Shade.HARD, 120.0) for k in range(3)]
    library.call(_put_reps, run.id, reps)
    start = run.day - timedelta(days=run.day.weekday())
    base = Block(start, start + timedelta(days=27), "Groundwork", "base", 0.9)
    library.call(operations.set_plan, [base], [])
    found = library.call(book, library.call(season.season, date(2026, 12, 1)))
    assert found.blocks[0].metres[LONG] == 3000.0
    said = [remark.text for remark in found.remarks]
    assert any("3 \N{MULTIPLICATION SIGN} 1000 m" in text and "base" in text for text in said)
    assert any(text.startswith("100 % of the fast metres") for text in said)
    assert all(remark.run_id == run.id for remark in found.remarks)


def test_a_set_in_words() -> None:
    item = BookSet(1, date(2026, 6, 16), "", Set(1, (200.0, 200.0), (40.0, 42.0), 60.0))
    assert set_words(item) == (
        "16 Jun: 2 \N{MULTIPLICATION SIGN} about 200 m, 0:40 to 0:42, speeds 2.4 % uneven, "
        "recovery 1:00."
    )


def _put_reps(store, run_id: int, reps) -> None:
    with store.atomic("Put repetitions"):
        text = json.dumps([asdict(rep) for rep in reps])
        store.put("judgement", {"run_id": run_id, "repetitions": text})


def test_book_and_bench_can_be_read_as_tables(page) -> None:
    page.twin.show_table.trigger()
    table = page.twin.table
    assert page.twin.currentWidget() is table and page.heads.isHidden()
    assert table.rowCount() == sum(len(week.sets) for block in page.book._book.blocks
                                   for week in block.weeks)  # fmt: skip
    assert page.twin.text.startswith("Block\tDay\tLength")
    page.shorter.twin.show_table.trigger()
    bench = page.shorter.twin.table
    shares = [bench.item(row, 2).text() for row in range(bench.rowCount())]
    assert len(shares) >= 40 and all(share.endswith("%") for share in shares)
