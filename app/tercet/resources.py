"""Where the program's own files lie (palette, fonts, demo recordings), and the palette itself."""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from types import MappingProxyType

_PACKAGE = Path(__file__).resolve().parent
_CHECKOUT = _PACKAGE.parent.parent


@dataclass(frozen=True)
class Palette:
    """Colours as ``#RRGGBB`` by role for the light and the dark theme, which share their roles."""

    light: Mapping[str, str]
    dark: Mapping[str, str]


def root() -> Path:
    """Directory of the program's own files: inside an installed package, or in the checkout."""
    return _first(_PACKAGE / "_data", _CHECKOUT / "resources")


def samples() -> Path:
    """Directory of the invented runner's recordings: installed, or in the checkout."""
    return _first(_PACKAGE / "_sample_logs", _CHECKOUT / "sample_logs")


@cache
def palette() -> Palette:
    """Read the palette, once.

    Raises
    ------
    ValueError
        If the two themes don't name the same roles.
    """
    with (root() / "palette.toml").open("rb") as file:
        table = tomllib.load(file)
    light, dark = table["light"], table["dark"]
    if light.keys() != dark.keys():
        raise ValueError(f"roles of one theme only: {sorted(light.keys() ^ dark.keys())}")
    return Palette(MappingProxyType(light), MappingProxyType(dark))


def fonts() -> tuple[Path, ...]:
    """The font files shipped with the program."""
    return tuple(sorted((root() / "fonts").glob("*.ttf")))


def _first(*places: Path) -> Path:
    """Return the first directory that exists, else the last one named."""
    return next((place for place in places if place.is_dir()), places[-1])
