"""What goes out of a record: without places unless one asks otherwise, said in words first."""

from __future__ import annotations

import zipfile

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QFileDialog
from tests.ui import fit

from tercet.library import without_places
from tercet.library.without_places import Home
from tercet.ui.places_dialog import NEAR, NONE, WHOLE, PlacesDialog


@pytest.fixture
def opened(qtbot):
    def open_it(zone: Home | None = None, proposed: str = "45.123 7.456") -> PlacesDialog:
        made = PlacesDialog(zone, proposed)
        qtbot.addWidget(made)
        made.show()
        made.told = []  # type: ignore[attr-defined]
        made.chosen.connect(lambda *told: made.told.append(told))  # type: ignore[attr-defined]
        return made

    return open_it


def test_without_a_choice_no_place_goes_out(opened) -> None:
    dialog = opened()
    QTest.mouseClick(dialog.go_on, Qt.MouseButton.LeftButton)
    assert dialog.told == [(NONE, None)]


def test_home_is_proposed_or_typed_and_what_is_no_place_is_told(opened) -> None:
    dialog = opened()
    dialog.ways[NEAR].setFocus()
    QTest.keyClick(dialog.ways[NEAR], Qt.Key.Key_Space)
    QTest.mouseClick(dialog.go_on, Qt.MouseButton.LeftButton)
    assert dialog.told == [] and dialog.wrong.isVisible() and "45.123" in dialog.wrong.text()
    QTest.mouseClick(dialog.most, Qt.MouseButton.LeftButton)
    QTest.mouseClick(dialog.go_on, Qt.MouseButton.LeftButton)
    ((way, zone),) = dialog.told
    assert way == NEAR and zone.words == "45.1230 7.4560"


def test_a_kept_zone_keeps_its_middle(opened) -> None:
    kept = Home(45.1, 7.4, 300.0, 40.0, -80.0)
    dialog = opened(kept)
    dialog.ways[NEAR].setChecked(True)
    QTest.mouseClick(dialog.go_on, Qt.MouseButton.LeftButton)
    assert dialog.told == [(NEAR, kept)]
    other = opened(kept)
    other.ways[WHOLE].setChecked(True)
    QTest.mouseClick(other.go_on, Qt.MouseButton.LeftButton)
    assert other.told == [(WHOLE, None)]


@pytest.mark.parametrize("kept", [None, Home(45.1, 7.4)])
def test_it_fits_and_speaks(opened, qtbot, kept) -> None:
    dialog = opened(kept)
    assert dialog.forget.isVisible() == (kept is not None)
    qtbot.wait(20)
    assert not fit.faults(dialog) and not fit.nameless(dialog)


def test_the_squad_page_writes_runs_without_places(
    qtbot, open_window, some_library, tmp_path, monkeypatch
) -> None:
    window = open_window(some_library)
    (tmp_path / "runs.zip").write_text("another's")  # of which the dialog asked nothing
    target = tmp_path / "runs 2.zip"
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (str(tmp_path / "runs"), ""))
    window.show_view("squad")
    flow = window.further.current.record
    QTest.mouseClick(flow.hand, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: flow.what is not None, timeout=10_000)
    QTest.mouseClick(flow.what.go_on, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: "runs 2.zip" in flow.said.text(), timeout=20_000)
    assert (tmp_path / "runs.zip").read_text() == "another's"
    with zipfile.ZipFile(target) as archive:
        assert len(archive.namelist()) > 1
        assert not any(b"Latitude" in archive.read(name) for name in archive.namelist())
    assert some_library.call(without_places.home) is None


def test_home_is_forgotten_at_once_and_comes_back_by_undo(qtbot, open_window, some_library) -> None:
    home = Home(45.1, 7.4, 300.0, 40.0, -80.0)
    some_library.call(without_places.keep, home)
    window = open_window(some_library)
    window.show_view("squad")
    flow = window.further.current.record
    QTest.mouseClick(flow.hand, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: flow.what is not None, timeout=10_000)
    dialog = flow.what
    QTest.mouseClick(dialog.forget, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: some_library.call(without_places.home) is None, timeout=10_000)
    assert dialog.place.text() == "" and "forgotten" in dialog.kept.text()
    assert not dialog.forget.isVisible() and dialog.isVisible()
    dialog.reject()
    qtbot.waitUntil(lambda: "Forget" in window.undo_bar.words.text(), timeout=10_000)
    QTest.mouseClick(window.undo_bar.undo, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: some_library.call(without_places.home) == home, timeout=10_000)
