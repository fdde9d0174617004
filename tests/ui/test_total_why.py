"""'Why this shade?' on a total: the words, and the pane, the sheet and the curve that say them."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QAccessible, QAccessibleAnnouncementEvent
from PySide6.QtTest import QTest

from tercet.domain import Block
from tercet.library import operations
from tercet.library.counted import Behind
from tercet.library.library import Library
from tercet.library.views import ZERO
from tercet.ui import total_words
from tercet.ui.total_words import Total
from tercet.ui.window import MainWindow

#: Qt's plugin without a screen says so of every window.
pytestmark = pytest.mark.qt_log_ignore("This plugin does not support")


@pytest.fixture
def window(some_library: Library, tmp_path: Path, open_window) -> MainWindow:
    diary = tmp_path / "diary.txt"
    diary.write_text("15.06.2026 easy 90 min\n16.06.2026 moderate 40 min", "utf-8")
    some_library.take_in([diary])
    blocks = [
        Block(date(2026, 4, 13), date(2026, 5, 31), "Groundwork", "base", 0.9),
        Block(date(2026, 6, 1), date(2026, 8, 2), "Support", "support", 0.8),
    ]
    some_library.call(operations.set_plan, blocks, [])
    return open_window(some_library)


def test_one_sentence_names_every_number() -> None:
    told = Behind(
        runs=22, both=14, pace=2, heart=1, words=3, unjudged=2, unjudged_s=720.0, said=1,
        known=17, estimated=17, ranged=17, low=(72_000.0, 1800.0, 0.0),
        high=(79_200.0, 5400.0, 20.0),
    )  # fmt: skip
    assert total_words.why_total("Hills", told) == (
        "Hills: 22 runs, 14 by pace and heart rate, 2 by pace alone, 1 by heart rate alone, "
        "3 by what was written and 2 not judged; you spoke for a part of 1; 17 of 17 by estimated "
        "thresholds; if the thresholds are right, in 9 of 10 cases or more the 17 measured "
        "runs are easy 20:00 to 22:00 and moderate 0:30 to 1:30; 0:12 could not be judged."
    )
    assert total_words.why_total("Hills", Behind()) == "Hills: nothing was run."


def test_the_three_counts_stand_together_with_why_they_differ() -> None:
    day = date(2026, 6, 1)
    total = Total(
        "Hills", day, day, (8000.0, 500.0, 1500.0, 0.0, 9.0), (14e3, 2e3, 4e3, 0.0, 0.0), (6, 0, 4)
    )
    said = total_words.total_words(total, Behind(runs=10, both=10)).split("\n")
    assert said[1] == (
        "Easy / moderate / hard: by time 80 / 5 / 15 %, by distance 70 / 10 / 20 %, "
        "by sessions 60 / 0 / 40 % (6 / 0 / 4)."
    )
    assert "counts whole by its work" in said[2]
    nothing = Total("Hills", day, day, ZERO, ZERO, (0, 0, 0))
    assert total_words.total_words(nothing, Behind()) == "Hills: nothing was run."


def test_focus_on_the_pane_s_totals_answers(qtbot, window: MainWindow) -> None:
    pane = window.season_page.build_up
    values = pane._values
    window.activateWindow()
    values.setFocus(Qt.FocusReason.TabFocusReason)
    qtbot.waitUntil(lambda: values.why != "", timeout=5_000)
    assert values.why.startswith("Support: ")
    assert "2 by what was written" in values.why
    assert values.accessibleDescription() == values.why.replace("\n", " ")
    sheet = window.season_page.sheet
    sheet.choose_days(date(2026, 6, 15), date(2026, 6, 16))
    qtbot.waitUntil(lambda: values.why == "", timeout=5_000)
    QTest.keyClick(values, Qt.Key.Key_W)
    qtbot.waitUntil(lambda: values.why != "", timeout=5_000)
    assert "2 runs, 2 by what was written" in values.why
    assert "(1 / 1 / 0)" in values.why


def test_w_on_the_sheet_answers_for_the_block(qtbot, window: MainWindow, monkeypatch) -> None:
    said: list[str] = []

    def hear(event: object) -> None:
        if isinstance(event, QAccessibleAnnouncementEvent):
            said.append(event.message())

    monkeypatch.setattr(QAccessible, "updateAccessibility", hear)
    sheet = window.season_page.sheet
    sheet.select_session(window.view.sessions[0].id)
    QTest.keyClick(sheet, Qt.Key.Key_W)
    qtbot.waitUntil(lambda: bool(said), timeout=5_000)
    assert said[0].startswith("Groundwork: ")
    assert "by pace and heart rate" in said[0]


def test_the_curve_s_page_says_it_of_the_season(qtbot, window: MainWindow) -> None:
    window.show_view("curve")
    page = window.further.current
    qtbot.waitUntil(lambda: page.data is not None and bool(page._why.text()), timeout=5_000)
    assert page._why.text().startswith("Whole season: ")
