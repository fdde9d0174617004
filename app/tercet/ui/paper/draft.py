"""A paper log that is not kept yet: kept over a restart with the window's settings."""

from __future__ import annotations

import json
from dataclasses import dataclass, field

from PySide6.QtCore import QSettings

from tercet.formats.paper import Shorthand
from tercet.formats.paper.shorthand import key_of
from tercet.library.paper_log import Draft


@dataclass
class Pending:
    """What was typed and answered so far."""

    text: str = ""
    words: dict[str, str] = field(default_factory=dict)
    bare: str | None = None  # None for the stored choice
    left_out: list[str] = field(default_factory=list)

    def answer(self, word: str, meaning: str) -> None:
        """Take a word for something from now on."""
        self.words[key_of(word)] = meaning

    def settle(self, stored: Shorthand) -> None:
        """Forget the answers that are stored now."""
        self.words = {w: m for w, m in self.words.items() if stored.words.get(w) != m}
        self.bare = None if self.bare == stored.bare else self.bare

    def shorthand(self, stored: Shorthand) -> Shorthand:
        """The stored shorthand with what was answered meanwhile."""
        bare = stored.bare if self.bare is None else self.bare
        return Shorthand({**stored.words, **self.words}, bare)

    def draft(self, stored: Shorthand) -> Draft:
        """The same as the library takes it."""
        changed = bool(self.words) or self.bare is not None
        own = self.shorthand(stored) if changed else None
        return Draft(self.text, own, tuple(self.left_out))


def load(settings: QSettings) -> Pending:
    """What was left when the window was closed."""
    return Pending(
        str(settings.value("paper/text", "") or ""),
        _table(settings.value("paper/words")),
        None if settings.value("paper/bare") is None else str(settings.value("paper/bare")),
        _list(settings.value("paper/left_out")),
    )


def save(settings: QSettings, pending: Pending) -> None:
    """Keep it for the next start."""
    settings.setValue("paper/text", pending.text)
    settings.setValue("paper/words", json.dumps(pending.words))
    settings.setValue("paper/left_out", json.dumps(pending.left_out))
    if pending.bare is None:
        settings.remove("paper/bare")
    else:
        settings.setValue("paper/bare", pending.bare)


def _table(value: object) -> dict[str, str]:
    found = _json(value)
    pairs = found.items() if isinstance(found, dict) else ()
    return {str(word): str(meaning) for word, meaning in pairs}


def _list(value: object) -> list[str]:
    found = _json(value)
    return [str(item) for item in found] if isinstance(found, list) else []


def _json(value: object) -> object:
    try:
        return json.loads(str(value)) if value else None
    except ValueError:
        return None  # a settings file edited by hand
