"""The words that files use for a sport, told apart by plain language."""

from __future__ import annotations

import re

_SPORTS = {
    "running": {"run", "running", "jog", "jogging"},
    "walking": {"walk", "walking"},
    "hiking": {"hike", "hiking", "mountaineering"},
    "cycling": {"bike", "biking", "cycle", "cycling", "ride"},
    "swimming": {"swim", "swimming"},
}
#: Words that say "running" by the place alone, and the kind of running they mean.
_KINDS = {
    "treadmill": "treadmill",
    "indoor": "treadmill",
    "trail": "trail",
    "track": "track",
    "race": "race",
}
_SAYS_NOTHING = {"", "generic", "other", "unknown", "all", "default", "none"}
_ON_FOOT = {"running", "walking", "hiking", "unknown"}
_LONGEST_WORDING = 40


def _plain(text: str) -> str:
    return re.sub(r"[^a-z]+", " ", text[:200].lower()).strip()


def sport_of(text: str) -> str:
    """Name the sport that a file's wording means.

    Parameters
    ----------
    text : str
        Such as "Running", "trail_running", "Biking"; may be empty.

    Returns
    -------
    str
        "running", "walking", "hiking", "cycling", "swimming", the wording itself in lower
        case if it says something else, or "unknown".
    """
    plain = _plain(text)
    words = set(plain.split())
    if "wheelchair" not in words:
        for sport, names in _SPORTS.items():
            if words & names:
                return sport
        if plain == "treadmill":
            return "running"
    return "unknown" if plain in _SAYS_NOTHING else plain[:_LONGEST_WORDING]


def kind_of(text: str) -> str:
    """Name the kind of running: "treadmill", "trail", "track", "race" or "" for none of them.

    Parameters
    ----------
    text : str
        A whole wording, such as "trail_running" or "treadmill"; a word among others
        ("track_cycling") does not count.
    """
    plain = _plain(text).removesuffix(" running").removesuffix(" run")
    return _KINDS.get(plain, "")


def on_foot(sport: str) -> bool:
    """Whether cadence in this sport means steps; an unknown sport is taken as one on foot."""
    return sport in _ON_FOOT
