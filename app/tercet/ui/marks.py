"""Small marks that a style sheet can only take from files: arrows, a tick and a dot."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from pathlib import Path

from PySide6.QtCore import QTemporaryDir

_SVG = '<svg xmlns="http://www.w3.org/2000/svg" width="16" height="16">{}</svg>'
_LINE = '<path d="{}" fill="none" stroke="{}" stroke-width="1.8"/>'
_PATHS = {
    "down": "M4 6 L8 10 L12 6",
    "up": "M4 10 L8 6 L12 10",
    "left": "M10 4 L6 8 L10 12",
    "right": "M6 4 L10 8 L6 12",
    "tick": "M3.5 8.5 L7 12 L13 4.5",
}


@cache
def _directory() -> QTemporaryDir:
    return QTemporaryDir()


@cache
def marks(color: str, on_accent: str) -> Mapping[str, str]:
    """Write the marks in one theme's colours and return their paths by name.

    Parameters
    ----------
    color : str
        ``#RRGGBB`` of the arrows.
    on_accent : str
        ``#RRGGBB`` of tick and dot, which stand on the accent colour.

    Raises
    ------
    OSError
        If the temporary directory can't be written.
    """
    texts = {
        name: _LINE.format(path, on_accent if name == "tick" else color)
        for name, path in _PATHS.items()
    }
    texts["dot"] = f'<circle cx="8" cy="8" r="4" fill="{on_accent}"/>'
    paths = {}
    for name, text in texts.items():
        file = Path(_directory().path()) / f"{name}-{color[1:]}-{on_accent[1:]}.svg"
        file.write_text(_SVG.format(text), encoding="utf-8")
        paths[name] = file.as_posix()
    return paths
