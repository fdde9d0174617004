"""The glossary: F1 opens it, typing narrows it, all of it fits."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from tests.ui import fit

from tercet.ui import theme
from tercet.ui.glossary import WORDS, Glossary


def test_f1_opens_it_and_typing_narrows_it(qtbot, open_window) -> None:
    window = open_window()
    window.activateWindow()
    qtbot.waitUntil(window.isActiveWindow, timeout=5_000)
    qtbot.keyClick(window, Qt.Key.Key_F1)
    made = window.findChild(Glossary)
    assert made.isVisible()
    assert all(word in made.text.toPlainText() for word, _ in WORDS)
    qtbot.keyClicks(made.field, "taper")
    assert "Taper" in made.text.toPlainText() and "Strides" not in made.text.toPlainText()
    made.close()


def test_the_words_stand_in_order_and_every_one_is_told() -> None:
    words = [word for word, _ in WORDS]
    assert words == sorted(words, key=str.lower)
    assert all(meaning.endswith(".") and len(meaning) > 15 for _, meaning in WORDS)


@pytest.mark.parametrize("scale", [1.0, 2.0])
def test_it_fits(qtbot, qapp, scale) -> None:
    theme.apply(qapp, False, scale)
    made = Glossary()
    qtbot.addWidget(made)
    made.show()
    qtbot.wait(20)
    assert not fit.faults(made) and not fit.nameless(made)
    theme.apply(qapp, False)
