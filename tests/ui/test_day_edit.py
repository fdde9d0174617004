"""A day typed, stepped and chosen: what is understood, what is told, what is refused."""

from __future__ import annotations

from datetime import date

import pytest
from PySide6.QtCore import QDate, Qt
from PySide6.QtWidgets import QCalendarWidget, QWidget

from tercet import week_days
from tercet.ui.day_edit import DayEdit, day_of

NEAR = date(2026, 12, 14)


@pytest.mark.parametrize(
    ("typed", "day"),
    [
        ("17 Sep 2026", date(2026, 9, 17)),
        ("17 sept 2026", date(2026, 9, 17)),
        ("September 17, 2026", date(2026, 9, 17)),
        ("17.9.2026", date(2026, 9, 17)),
        ("2026-09-17", date(2026, 9, 17)),
        ("3 Jan", date(2027, 1, 3)),  # the nearest third of January
        ("3.11.", date(2026, 11, 3)),
        ("5", date(2026, 12, 5)),
        ("29 Feb", None),  # none of the years about has one
        ("3/4/2026", None),  # could be two days
        ("31.4.2026", None),
        ("5 ju", None),
        ("", None),
    ],
)
def test_a_typed_day(typed: str, day: date | None) -> None:
    assert day_of(typed, NEAR) == day


@pytest.fixture
def field(qtbot) -> DayEdit:
    made = DayEdit(NEAR, "Race day")
    qtbot.addWidget(made)
    made.show()
    made.setFocus()
    return made


def typed(qtbot, field: DayEdit, text: str) -> None:
    field.selectAll()
    qtbot.keyClicks(field, text)
    qtbot.keyClick(field, Qt.Key.Key_Return)


def test_a_day_is_told_once_it_is_whole(qtbot, field: DayEdit) -> None:
    told: list[QDate] = []
    field.dateChanged.connect(told.append)
    typed(qtbot, field, "17 Sep 2026")
    assert (field.day, told) == (date(2026, 9, 17), [QDate(2026, 9, 17)])
    assert "17 Sep" in field.text()
    qtbot.keyClick(field, Qt.Key.Key_Up)
    qtbot.keyClick(field, Qt.Key.Key_PageDown)
    assert field.day == date(2026, 8, 18)
    typed(qtbot, field, "soon")
    assert (field.day, field.text()) == (date(2026, 8, 18), "soon")
    assert "such as" in field.accessibleDescription()
    field.clearFocus()
    assert field.text().startswith("18 Aug")


def test_a_day_is_chosen_in_a_calendar_of_the_users_weeks(qtbot, field: DayEdit) -> None:
    week_days.begin_on(week_days.SUNDAY)
    try:
        qtbot.keyClick(field, Qt.Key.Key_Down, Qt.KeyboardModifier.AltModifier)
    finally:
        week_days.begin_on(week_days.MONDAY)
    calendar = field.findChild(QCalendarWidget)
    qtbot.waitUntil(calendar.isVisible, timeout=5_000)
    assert calendar.firstDayOfWeek() == Qt.DayOfWeek.Sunday
    assert calendar.selectedDate() == QDate(2026, 12, 14)
    inside = calendar.findChild(QWidget, "qt_calendar_calendarview")
    qtbot.keyClick(inside, Qt.Key.Key_Right)
    qtbot.keyClick(inside, Qt.Key.Key_Return)
    qtbot.waitUntil(lambda: field.day == date(2026, 12, 15), timeout=5_000)


def test_what_is_no_day_of_a_calendar_changes_nothing(qtbot, field: DayEdit) -> None:
    qtbot.keyClick(field, Qt.Key.Key_F4)
    calendar = field.findChild(QCalendarWidget)
    calendar.activated.emit(QDate())  # as Qt gives it for the row of weekdays
    assert field.day == NEAR
    typed(qtbot, field, "31 Dec 9999")
    qtbot.keyClick(field, Qt.Key.Key_Up)
    assert field.day.year <= 9999 and field.isVisible()
