"""The pages of curve, middle and two seasons, worked as hands do."""

from __future__ import annotations

from datetime import date, timedelta
from pathlib import Path

import pytest
from PySide6.QtCore import QSize, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from tests.ui import fit

from tercet.domain import Block
from tercet.engine.causes import Cause
from tercet.engine.shades import whole_shares
from tercet.library import operations, suggested
from tercet.library.library import Library
from tercet.store import plan_queries, queries
from tercet.ui import theme
from tercet.ui.window import MainWindow


@pytest.fixture
def window(some_library: Library, tmp_path: Path, open_window) -> MainWindow:
    """A window over a dozen runs in two blocks."""
    words = "easy 90 min", "moderate 40 min", "easy 40 min, 20 min moderate"
    days = (f"{15 + k}.06.2026 {text}" for k, text in enumerate(words))
    diary = tmp_path / "diary.txt"
    diary.write_text("\n".join(days), "utf-8")
    some_library.take_in([diary])
    blocks = [
        Block(date(2026, 4, 13), date(2026, 5, 31), "Groundwork", "base", 0.9),
        Block(date(2026, 6, 1), date(2026, 8, 2), "Support", "support", 0.8),
    ]
    some_library.call(operations.set_plan, blocks, [])
    return open_window(some_library)


def shown(qtbot, window: MainWindow, key: str):
    window.show_view(key)
    page = window.further.current
    assert page is not None
    qtbot.waitUntil(lambda: page.data is not None, timeout=5_000)
    return page


def test_shares_add_up_to_a_hundred() -> None:
    assert whole_shares((1 / 3, 1 / 3, 1 / 3)) == (33, 33, 34)
    assert sum(whole_shares((0.866, 0.0706, 0.0634))) == 100


def test_the_curve_of_the_season_and_of_a_block(qtbot, window: MainWindow) -> None:
    page = shown(qtbot, window, "curve")
    assert page.data.shown.name == "Whole season"
    assert "per cent easy" in page.curve.accessibleDescription()
    assert page.blocks.model().rowCount() == 2
    page.blocks.setFocus()
    QTest.keyClick(page.blocks, Qt.Key.Key_Return)  # the latest
    qtbot.waitUntil(lambda: page.data.shown.name == "Support", timeout=5_000)
    assert page.chooser.currentText() == "Support block"
    first = page.blocks.model().index(0, 0)
    assert " % easy" in first.data(Qt.ItemDataRole.AccessibleTextRole)
    assert "per cent easy" in first.data(Qt.ItemDataRole.AccessibleDescriptionRole)
    place = page.blocks.visualRect(first).center()
    QTest.mouseClick(page.blocks.viewport(), Qt.MouseButton.LeftButton, pos=place)
    qtbot.waitUntil(lambda: page.data.shown.name == first.data(), timeout=5_000)
    assert page.twin.text.splitlines()[0].startswith("stretch\teasy")
    QTest.mouseClick(page.middle, Qt.MouseButton.LeftButton)
    assert window.further.current_key == "middle"


def test_an_unfolded_cause_keeps_its_name_in_view(qtbot, window: MainWindow) -> None:
    window.resize(900, 480)
    page = shown(qtbot, window, "middle")
    page.choose("season")
    qtbot.waitUntil(lambda: page.data.shown.key == "season", timeout=5_000)
    for number in range(len(page.rows)):
        page.rows[number].setFocus()
        QTest.keyClick(page.rows[number], Qt.Key.Key_Return)
        row = page.rows[number]

        def seen(row=row) -> bool:
            whole = row.visibleRegion().boundingRect().height() == row.height()
            return whole and not page.runs.visibleRegion().isEmpty()

        qtbot.waitUntil(seen, timeout=2_000)
        qtbot.wait(60)
        assert seen(), row.view.cause


def test_a_cause_unfolds_its_runs_and_opens_one(qtbot, window: MainWindow) -> None:
    page = shown(qtbot, window, "middle")
    page.choose("season")
    qtbot.waitUntil(lambda: page.data.shown.key == "season", timeout=5_000)
    total = sum(row.view.seconds for row in page.rows)
    assert total == pytest.approx(page.data.middle.moderate_s, abs=2)
    row = page.rows[0]
    row.setFocus()
    QTest.keyClick(row, Qt.Key.Key_Return)
    assert page.rows[0].unfolded
    assert page.runs is not None
    number = page.rows[0].view.runs[0].session.id
    with qtbot.waitSignal(page.session_asked) as asked:
        opener = next(b for b in page.runs.findChildren(type(page.back)) if b.text() == "Open")
        QTest.mouseClick(opener, Qt.MouseButton.LeftButton)
    assert asked.args == [number]
    qtbot.waitUntil(lambda: window.pages.currentWidget() is window.session_page, timeout=5_000)


def test_what_was_meant_is_said_and_taken_back(qtbot, window: MainWindow) -> None:
    page = shown(qtbot, window, "middle")
    page.choose("season")
    qtbot.waitUntil(lambda: page.data.shown.key == "season", timeout=5_000)
    row = next(row for row in page.rows if row.view.cause != Cause.MEANT)
    number = row.view.runs[0].session.id
    QTest.mouseClick(row, Qt.MouseButton.LeftButton)
    said = next(b for b in page.runs.findChildren(type(page.back)) if b.text() == "Meant")
    QTest.mouseClick(said, Qt.MouseButton.LeftButton)

    def meant() -> set[int]:
        views = page.data.middle.causes
        return {r.session.id for v in views if v.cause == Cause.MEANT for r in v.runs}

    qtbot.waitUntil(lambda: number in meant(), timeout=5_000)
    window.acts.undo()
    qtbot.waitUntil(lambda: number not in meant(), timeout=5_000)


def test_a_remark_is_put_away_and_brought_back(qtbot, window: MainWindow) -> None:
    page = shown(qtbot, window, "middle")
    page.choose(next(span.key for span in page.data.spans if span.name == "Support"))
    qtbot.waitUntil(lambda: page.data.shown.name == "Support", timeout=5_000)
    keys = [row.remark.key for row in page.remarks]
    assert "easy short" in keys  # 80 % were wanted
    away = page.remarks[keys.index("easy short")].buttons[-1]
    QTest.mouseClick(away, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(
        lambda: "easy short" not in [row.remark.key for row in page.remarks], timeout=5_000
    )
    window.acts.undo()
    qtbot.waitUntil(lambda: "easy short" in [r.remark.key for r in page.remarks], timeout=5_000)


def test_blocks_side_by_side(qtbot, window: MainWindow) -> None:
    page = shown(qtbot, window, "two")
    # With one season there are none to lay beside it: its blocks are, until asked otherwise.
    qtbot.waitUntil(page.by_block.isChecked, timeout=5_000)
    qtbot.waitUntil(lambda: page.choosers[0].currentText() == "Groundwork", timeout=5_000)
    assert page.choosers[1].currentText() == "Support"
    assert page.back_rows.rows == 9
    assert "beside Support, 9 weeks" in page.back_rows.accessibleName()
    QTest.mouseClick(page.by_block, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: page._said.text().startswith("There is one season"), timeout=5_000)
    assert not page.by_block.isChecked() and page.choosers[0].isHidden()


def test_empty_pages_say_what_would_fill_them(qtbot, library: Library, open_window) -> None:
    window = open_window()
    for key, words in (("curve", "Nothing has been judged"), ("middle", "Nothing has been run")):
        page = shown(qtbot, window, key)
        label = page._said if key == "curve" else page._sum
        assert label.text().startswith(words)


LOOKS = [(1366, 768, 1.0, False), (1366, 768, 1.5, True), (1366, 768, 2.0, False),
         (1920, 1080, 1.0, True)]  # fmt: skip


@pytest.mark.parametrize(("width", "height", "scale", "dark"), LOOKS)
def test_nothing_is_cut_off(
    qtbot, window: MainWindow, width: int, height: int, scale: float, dark: bool
) -> None:
    app = QApplication.instance()
    assert isinstance(app, QApplication)
    theme.apply(app, dark, scale)
    window.resize(width, height)
    for key in ("curve", "middle", "two"):
        page = shown(qtbot, window, key)
        if key == "middle":
            page.choose("season")
            qtbot.waitUntil(lambda page=page: page.data.shown.key == "season", timeout=5_000)
            page.unfold(page.rows[0].view.cause)
        for _ in range(4):
            qtbot.wait(5)
            window.grab()
        assert window.size() == QSize(width, height), "the window had to grow"
        assert not fit.faults(page)
        assert not fit.nameless(page)
    theme.apply(app, False)


def test_a_blocks_heading_leads_to_its_middle(qtbot, window: MainWindow) -> None:
    sheet = window.season_page.sheet
    row = next(
        n
        for n, entry in enumerate(sheet.model().rows())
        if entry.week is None and entry.block.name == "Groundwork"
    )
    sheet.scrollTo(sheet.model().index(row, 0))
    spot = sheet.visualRect(sheet.model().index(row, 0)).center()
    QTest.mouseClick(sheet.viewport(), Qt.MouseButton.LeftButton, pos=spot)
    assert window.further.current_key == "middle"
    page = window.further.current
    qtbot.waitUntil(
        lambda: page.data is not None and page.data.shown.name == "Groundwork", timeout=5_000
    )


def test_runs_without_causes_are_looked_into_on_asking(
    qtbot, some_library: Library, window: MainWindow
) -> None:
    def forget(store) -> None:
        with store.atomic("Forget causes"):
            for number in queries.run_ids(store):
                store.put("judgement", {"run_id": number, "causes": ""})

    some_library.call(forget)
    page = shown(qtbot, window, "middle")
    page.choose("season")
    qtbot.waitUntil(lambda: page.data.shown.key == "season", timeout=5_000)
    assert page.data.middle.untold > 0 and page.again.isVisible()
    QTest.mouseClick(page.again, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: page.data.middle.untold == 0, timeout=20_000)
    assert page.again.isHidden()


def test_what_next_week_asks_is_put_into_the_plan_once(
    qtbot, library: Library, tmp_path: Path, open_window
) -> None:
    days = [date.today() - timedelta(days=k) for k in range(1, 28, 3)]
    diary = tmp_path / "diary.txt"
    diary.write_text("\n".join(f"{day:%d.%m.%Y} easy 60 min" for day in days), "utf-8")
    library.take_in([diary])
    page = shown(qtbot, open_window(library), "middle")
    qtbot.waitUntil(lambda: page.next_week is not None, timeout=5_000)
    assert page.data.suggested
    count = len(page.data.suggested)
    QTest.mouseClick(page.next_week.into_plan, Qt.MouseButton.LeftButton)
    QTest.mouseClick(page.next_week.into_plan, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: page.data.suggested == (), timeout=5_000)
    planned = library.call(plan_queries.planned)
    assert len(planned) == count
    assert all(item.notation.endswith("min easy") for item in planned)
    assert library.undo_names()[0] == suggested.NAME


def test_a_next_step_writes_its_line_and_then_leads_to_the_plan(
    qtbot, library: Library, tmp_path: Path, open_window
) -> None:
    today = date.today()
    days = [today - timedelta(days=k) for k in range(1, 28, 3)]
    diary = tmp_path / "diary.txt"
    diary.write_text("\n".join(f"{day:%d.%m.%Y} easy 60 min" for day in days), "utf-8")
    library.take_in([diary])
    library.call(
        operations.set_plan, [Block(today - timedelta(days=34), today, "Now", "base", 0.9)], []
    )
    window = open_window(library)
    page = shown(qtbot, window, "middle")

    def last_step():
        return page.remarks[0].buttons[-2]  # before "Put away"

    assert last_step().text() == "Plan strides"
    assert "fast" in last_step().toolTip()
    QTest.mouseClick(last_step(), Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: last_step().text() == "Open the plan", timeout=5_000)
    (line,) = library.call(plan_queries.planned)
    assert line.notation.endswith("6 x 20 s fast / 60 s jog, 5 min easy")
    QTest.mouseClick(last_step(), Qt.MouseButton.LeftButton)
    assert window.further.current is not page
    window.acts.undo()
    qtbot.waitUntil(lambda: library.call(plan_queries.planned) == [], timeout=5_000)
