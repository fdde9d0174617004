"""Every page fits and says all it says in each language shipped, not in English alone."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from PySide6.QtCore import QSize
from tests.ui import fit
from tests.ui.test_fit import check, filled, filled_store, settle, shown

from tercet import language
from tercet.ui import spoken
from tercet.ui.pages import PAGES

__all__ = ["filled", "filled_store", "shown"]

OTHERS = [code for code in language.languages() if code != language.SOURCE]


@pytest.fixture(params=OTHERS)
def asked(request: pytest.FixtureRequest) -> Iterator[set[str]]:
    """Speak a language, and note what it is asked for and has no words for."""
    spoken.speak(request.param)
    known = language._words
    missed: set[str] = set()

    class Noting(dict[tuple[str, str], str]):
        def get(self, key, default=None):  # type: ignore[no-untyped-def]
            if key not in self:
                missed.add(key[0])
            return super().get(key, default)

    # Put back before the language is: the fixture of that name is undone last of all.
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(language, "_words", Noting(known))
        yield missed


@pytest.mark.parametrize("scale", [1.0, 1.5])
def test_every_page_fits(qtbot, asked, shown, scale) -> None:
    window = shown(1366, 768, scale, False)
    size = QSize(1366, 768)
    check(qtbot, window, size)
    window.show_recordings(True)
    check(qtbot, window, size)
    window.show_recordings(False)
    window.show_view("session")
    qtbot.waitUntil(lambda: window.pages.currentWidget() is window.session_page, timeout=10_000)
    check(qtbot, window, size)
    for entry in PAGES:
        window.show_view(entry.key)
        page = window.further.current
        assert page is not None, entry.key
        qtbot.waitUntil(lambda: window._answers.waiting == 0, timeout=20_000)
        settle(qtbot, window)
        assert not [*fit.faults(page), *fit.nameless(page)], entry.key
    # Figures and signs are no words of a language; some have words already.
    words = {
        text for text in asked if any(part.isalpha() and part.islower() for part in text.split())
    }
    assert not words - set(language._words.values())
