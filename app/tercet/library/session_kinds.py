"""What a session can be said to have been: sports and kinds of running, with their words."""

from __future__ import annotations

from typing import NamedTuple

from tercet.language import mark, tr


class Kind(NamedTuple):
    """A sport, a kind of running or ``""``, as both are kept, and marks of their words."""

    sport: str
    kind: str
    said: str
    name: str  # of a session that nobody named


#: All that may be chosen, in the order of the menus.
KINDS = (
    Kind("running", "", mark("running"), mark("Run")),
    Kind("running", "treadmill", mark("treadmill"), mark("Treadmill run")),
    Kind("running", "trail", mark("trail"), mark("Trail run")),
    Kind("running", "track", mark("track"), mark("Track run")),
    Kind("running", "race", mark("race"), mark("Race")),
    Kind("walking", "", mark("walking"), mark("Walking")),
    Kind("hiking", "", mark("hiking"), mark("Hiking")),
    Kind("cycling", "", mark("cycling"), mark("Cycling")),
    Kind("swimming", "", mark("swimming"), mark("Swimming")),
    Kind("other", "", mark("another sport"), mark("Other session")),
)
_UNKNOWN = Kind("unknown", "", mark("unknown sport"), mark("Other session"))
_BY_KEY = {(kind.sport, kind.kind): kind for kind in (*KINDS, _UNKNOWN)}


def of(sport: str, kind: str) -> Kind | None:
    """Find what is kept of a session among :data:`KINDS`; None for a file's own wording."""
    return _BY_KEY.get((sport, kind)) or _BY_KEY.get((sport, ""))


def said(sport: str, kind: str) -> str:
    """Word a session's kind as a sentence or a menu says it: ``treadmill``, ``cycling``."""
    known = of(sport, kind)
    return tr(known.said) if known else sport.replace("_", " ")


def name(sport: str, kind: str) -> str:
    """Name a session that nobody named: ``Treadmill run``, ``Cycling``."""
    known = of(sport, kind)
    return tr(known.name) if known else sport.replace("_", " ").capitalize()
