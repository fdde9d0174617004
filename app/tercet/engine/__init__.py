"""The zone engine: pure functions on arrays that judge every second and metre of running.

Nothing here knows of files, stores or screens. The app and the tests call the same functions:
:func:`judge` for one recording, :mod:`tercet.engine.tally` for sums,
:mod:`tercet.engine.estimate` for thresholds that nobody has measured.

What needs numpy is loaded at its first use, so that the first picture does not wait for it.
"""

from importlib import import_module
from typing import TYPE_CHECKING, Any

from tercet.engine.shades import LETTERS, Shade, Thresholds, check_thresholds

if TYPE_CHECKING:
    from tercet.engine.judgement import Evidence, Judgement, Repetition
    from tercet.engine.judging import judge
    from tercet.engine.scale import intensity, shade_of

__all__ = [
    "LETTERS",
    "Evidence",
    "Judgement",
    "Repetition",
    "Shade",
    "Thresholds",
    "check_thresholds",
    "intensity",
    "judge",
    "shade_of",
]

_LATER = {
    "Evidence": "judgement",
    "Judgement": "judgement",
    "Repetition": "judgement",
    "judge": "judging",
    "intensity": "scale",
    "shade_of": "scale",
}


def __getattr__(name: str) -> Any:
    if name not in _LATER:
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
    return getattr(import_module(f"{__name__}.{_LATER[name]}"), name)
