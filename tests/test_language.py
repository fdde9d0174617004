"""Words in another language: looked up, filled, left English where nothing is translated."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from tercet import language, resources
from tercet.formats import paper
from tercet.language import several, tr

CATALOGUE = """<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="de_DE" sourcelanguage="en"><context><name></name>
<message><source>{n} run</source><translation>{n} Lauf</translation></message>
<message><source>{n} runs</source><translation>{n} Läufe</translation></message>
<message><source>Base</source><comment>block</comment><translation>Grundlage</translation></message>
<message><source>.</source><comment>decimal sign</comment><translation>,</translation></message>
<message><source>,</source><comment>thousands sign</comment><translation>.</translation></message>
<message><source>How long?</source><translation>Wie lange?</translation></message>
<message><source>Later</source><translation type="unfinished">Halb</translation></message>
</context></TS>
"""


@pytest.fixture(autouse=True)
def german(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    (tmp_path / "language").mkdir()
    (tmp_path / "language" / "tercet_de.ts").write_text(CATALOGUE, "utf-8")
    monkeypatch.setattr(resources, "root", lambda: tmp_path)
    language.languages.cache_clear()
    language._catalogue.cache_clear()
    yield
    language.use("en")
    language.languages.cache_clear()
    language._catalogue.cache_clear()


def test_words_and_numbers_of_the_language_in_use() -> None:
    assert dict(language.languages()) == {"en": "English", "de": "Deutsch"}
    language.use("de")
    assert several(1, "{n} run", "{n} runs") == "1 Lauf"
    assert several(2, "{n} run", "{n} runs") == "2 Läufe"
    assert language.number(3.14159, 2) == "3,14"
    assert language.grouped(1_234_567) == "1.234.567"
    language.use("en")
    assert several(2, "{n} run", "{n} runs") == "2 runs"
    assert language.number(3.14159, 2) == "3.14"


def test_a_note_tells_equal_words_apart() -> None:
    language.use("de")
    assert (tr("Base", "block"), tr("Base")) == ("Grundlage", "Base")


def test_what_a_diary_asks_follows_the_language_though_sessions_are_kept() -> None:
    def asked() -> str:
        return paper.resolve("4 x fast").session.unclear[0].question

    assert asked() == "How long?"
    language.use("de")
    assert asked() == "Wie lange?"


def test_what_is_unfinished_or_unknown_stays_english() -> None:
    language.use("de")
    assert tr("Later") == "Later"
    language.use("tlh")
    assert language.code() == "en"


def test_a_place_without_a_value_is_an_error_and_braces_alone_are_not() -> None:
    with pytest.raises(KeyError):
        tr("{a} and {b}", a=1)
    assert tr("{as it is}") == "{as it is}"


def test_a_text_is_known_again_in_whatever_language_it_was_kept() -> None:
    assert language.in_every_language("{n} run") == ("{n} run", "{n} Lauf")
    assert language.in_every_language("Nowhere") == ("Nowhere", "Nowhere")
