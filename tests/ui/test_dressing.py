"""Another look on what is in view, on hidden pages, and on pages and dialogs that come later."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from PySide6.QtWidgets import QApplication, QDialog, QPushButton, QVBoxLayout, QWidget

from tercet.library.library import Library
from tercet.ui import theme
from tercet.ui.paper.editor import PaperEditor
from tercet.ui.widgets import SETTLED_MS, Label, clear_scroll
from tercet.ui.window import MainWindow

FONTS = ("page_title", "pane_title", "block", "big", "body", "body_bold", "small", "small_bold")
INKS = ("text", "text_2", "text_3", "not_read")
LOOKS = [(True, 1.3), (False, 1.3), (False, 1.0)]


@pytest.fixture
def library(some_library: Library) -> Library:
    return some_library


@pytest.fixture
def window(open_window) -> MainWindow:
    return open_window()


@pytest.fixture(autouse=True)
def light_again(qapp: QApplication) -> Iterator[None]:
    yield
    theme.apply(qapp, False)


def primary(widget: QWidget) -> QPushButton:
    """The button that stands out."""
    found = [each for each in widget.findChildren(QPushButton) if each.property("primary")]
    return found[0]


def worn(button: QPushButton, look: theme.Theme) -> bool:
    """Whether a button is painted in a look's colour and has its height."""
    high = {1.0: 34, 1.3: 42}[look.scale]
    seen = button.grab().toImage().pixelColor(12, button.height() // 4)
    return abs(button.sizeHint().height() - high) <= 2 and seen == look.color("accent")


def wrong_labels(widget: QWidget, look: theme.Theme) -> list[str]:
    """Labels in other colours, or of another size, than one made now."""
    new = {(role, color): Label("", role, color) for role in FONTS for color in INKS}
    kinds = {(made.font().key(), ink(made)) for made in new.values()}
    return [
        label.text()
        for label in widget.findChildren(Label)
        if (label.font().key(), ink(label)) not in kinds
    ]


def ink(label: Label) -> str:
    return label.palette().color(label.foregroundRole()).name()


@pytest.mark.parametrize(("dark", "scale"), LOOKS[:2])
def test_pages_in_view_hidden_and_new_wear_it(qtbot, qapp, window, dark, scale) -> None:
    window.show_view("thresholds")
    page = window.further.current
    hidden = primary(page.ways)
    window.show_view("season")
    look = theme.apply(qapp, dark, scale)
    assert worn(primary(window.bar), look) and not wrong_labels(window.season_page, look)
    qtbot.waitUntil(lambda: worn(hidden, look) and page.styleSheet() == look.style_sheet())
    assert not wrong_labels(page, look)
    window.show_view("review")
    qtbot.waitUntil(lambda: worn(primary(window.further.current), look))


def test_a_hidden_page_wears_it_as_soon_as_it_is_shown(qapp, window) -> None:
    window.show_view("thresholds")
    window.show_view("season")
    look = theme.apply(qapp, True, 1.3)
    window.show_view("thresholds")
    assert worn(primary(window.further.current.ways), look)
    assert not wrong_labels(window.further.current, look)


def test_dialogs_open_and_to_come_wear_it(qtbot, qapp, window) -> None:
    def dialogs() -> list[QDialog]:
        return [each for each in window.findChildren(QDialog) if each.isVisible()]

    for dark, scale in LOOKS:
        look = theme.apply(qapp, dark, scale)
        if not dialogs():
            window.acts.edit_plan()
            qtbot.waitUntil(lambda: bool(dialogs()))
        qtbot.waitUntil(lambda look=look: worn(dialogs()[0].save, look))
    dialogs()[0].reject()


def test_a_further_window_begins_in_the_look_in_force(qtbot, qapp, window) -> None:
    look = theme.apply(qapp, True, 1.3)
    further = MainWindow(window._library)
    qtbot.addWidget(further)
    assert worn(primary(further.bar), look) and worn(primary(window.bar), look)
    window.close()
    look = theme.apply(qapp, True, 1.0)
    qtbot.waitUntil(lambda: worn(primary(further.bar), look))


def test_windows_of_their_own_are_dressed_where_they_are_made(qtbot, qapp, window) -> None:
    before, after = QWidget(), QWidget()
    for widget in (before, after):
        qtbot.addWidget(widget)
        made = QPushButton("Add", widget)
        made.setProperty("primary", True)
    look = theme.apply(qapp, True, 1.3)
    theme.dress(after)
    assert worn(primary(after), look)
    qtbot.waitUntil(lambda: worn(primary(before), look))  # hidden: after all that is in view


def test_fonts_that_a_hidden_page_sets_itself_stay(qtbot, qapp, window) -> None:
    window.show_view("session")
    qtbot.waitUntil(lambda: window.pages.currentWidget() is window.session_page)
    window.show_view("season")
    look = theme.apply(qapp, False, 2.0)
    page, head = window.session_page, window.session_page.head
    qtbot.waitUntil(lambda: page.styleSheet() == look.style_sheet())
    for made, role in ((head.title, "page_title"), (head.date, "body"), (head.back, "body_bold")):
        assert made.font().pixelSize() == look.font(role).pixelSize()


def test_the_chosen_run_stays_in_view_at_another_text_size(qtbot, window) -> None:
    window.resize(1910, 1030)
    sheet = window.season_page.sheet
    sheet.select_session(window.view.sessions[-1].id)
    sheet.scrollTo(sheet.currentIndex())

    def in_view() -> bool:
        return bool(sheet.viewport().rect().contains(sheet.visualRect(sheet.currentIndex())))

    qtbot.waitUntil(in_view)
    for size in (150, 200, 130, 100):
        window.look.choose(size=size)
        qtbot.waitUntil(window.updatesEnabled)
        qtbot.waitUntil(in_view)


def test_a_scrolled_page_keeps_its_place_at_another_text_size(qtbot, qapp) -> None:
    inside = QWidget()
    column = QVBoxLayout(inside)
    for number in range(60):
        column.addWidget(Label(f"Week {number}"))
    area = clear_scroll(inside)
    qtbot.addWidget(area)
    area.resize(300, 300)
    area.show()
    bar = area.verticalScrollBar()
    qtbot.waitUntil(lambda: bar.maximum() > 600)
    bar.setValue(bar.maximum() // 2)
    before = bar.maximum()
    for scale in (1.5, 1.0):
        theme.apply(qapp, False, scale)
        qtbot.waitUntil(lambda scale=scale: (bar.maximum() > 1.2 * before) == (scale > 1.0))
        qtbot.waitUntil(lambda: abs(bar.value() / bar.maximum() - 0.5) < 0.02)
        qtbot.wait(SETTLED_MS + 50)


@pytest.mark.parametrize("seen", [True, False])
def test_hints_in_empty_fields_follow_the_text_size(qtbot, qapp, window, seen: bool) -> None:
    window.show_view("paper")
    editor = window.further.current.findChild(PaperEditor)
    if not seen:
        window.show_view("season")
    theme.apply(qapp, False, 1.5)
    size = theme.current().font("body").pixelSize()
    qtbot.waitUntil(lambda: editor.viewport().font().pixelSize() == size)
    assert editor.font().pixelSize() == size
