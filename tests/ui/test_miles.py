"""With miles chosen no page writes kilometres, but for what the runner typed and names of races."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from datetime import date
from pathlib import Path

import pytest
from PySide6.QtCore import QCoreApplication, QEvent
from PySide6.QtWidgets import (
    QAbstractButton,
    QComboBox,
    QLabel,
    QLineEdit,
    QTableWidget,
    QWidget,
)

from tercet import units
from tercet.domain import Block, Race
from tercet.library import operations, planning
from tercet.library.library import Library
from tercet.ui.amounts import amount_of, amount_words
from tercet.ui.pages import PAGES
from tercet.ui.window import MainWindow

KILOMETRES = re.compile(r"\bkm\b|kilomet")
#: Names of races, treadmills' and laboratories' own unit, what a diary's number alone may mean.
ITSELF = re.compile(r"\b(3|5|10) km\b(?! /)|km/h|^kilometres$")


@pytest.fixture
def window(some_library: Library, tmp_path: Path, open_window: Callable[..., MainWindow]):
    diary = tmp_path / "diary.txt"
    days = ("easy 90 min", "moderate 40 min", "20 min easy, 8 x 200 m fast / 200 m jog")
    diary.write_text("\n".join(f"{15 + k}.06.2026 {text}" for k, text in enumerate(days)), "utf-8")
    some_library.take_in([diary])
    blocks = [
        Block(date(2026, 4, 13), date(2026, 5, 31), "Groundwork", "base", 0.9),
        Block(date(2026, 6, 1), date(2026, 12, 31), "Support", "support", 0.8, measure="metres"),
    ]
    race = Race(date(2026, 12, 20), "Lake run", 15_000.0, goal_s=4200.0, main=True)
    some_library.call(operations.set_plan, blocks, [race])
    some_library.call(planning.add_planned, date.today(), "8 x 200 m fast / 200 m jog")
    return open_window(some_library)


def written(page: QWidget) -> Iterator[str]:
    for part in [page, *page.findChildren(QWidget)]:
        yield part.accessibleName()
        yield part.accessibleDescription()
        yield part.toolTip()
        if isinstance(part, (QLabel, QLineEdit, QAbstractButton)):
            yield part.text()
        if isinstance(part, QLineEdit):
            yield part.placeholderText()
        if isinstance(part, QComboBox):
            yield from (part.itemText(k) for k in range(part.count()))
        if isinstance(part, QTableWidget):
            for row in range(part.rowCount()):
                for column in range(part.columnCount()):
                    item = part.item(row, column)
                    yield item.text() if item is not None else ""
            for column in range(part.columnCount()):
                head = part.horizontalHeaderItem(column)
                yield head.text() if head is not None else ""


def in_kilometres(page: QWidget) -> list[str]:
    return [text for text in written(page) if KILOMETRES.search(ITSELF.sub("", text))]


def settle(qtbot, window: MainWindow) -> None:
    qtbot.waitUntil(lambda: not window.refreshing and not window.further.waiting, timeout=10_000)
    QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)  # what was shown before


def test_every_page_follows_the_units(qtbot, window: MainWindow) -> None:
    keys = ["season", "session", *(entry.key for entry in PAGES)]
    for key in keys:  # built in kilometres first
        window.show_view(key)
        settle(qtbot, window)
    window.look.choose(units="miles")
    with qtbot.waitSignal(window.season_shown, timeout=10_000):
        window.refresh()
    found = {}
    for key in keys:
        window.show_view(key)
        settle(qtbot, window)
        found[key] = in_kilometres(window.pages.currentWidget())
    assert found == {key: [] for key in keys}


def test_an_amount_typed_in_miles_is_kept_in_metres() -> None:
    units.use("miles")
    assert amount_of("10", "metres") == pytest.approx(16_093.44)
    assert amount_words(16_093.44, "metres") == "10.0"
    assert amount_of("10", "time") == 36_000.0
