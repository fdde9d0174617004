"""The zone engine: pure functions on arrays that judge every second and metre of running.

Nothing here knows of files, stores or screens. The app and the tests call the same functions:
:func:`judge` for one recording, :mod:`tercet.engine.tally` for sums,
:mod:`tercet.engine.estimate` for thresholds that nobody has measured.
"""

from tercet.engine.judgement import Evidence, Judgement, Repetition
from tercet.engine.judging import judge
from tercet.engine.scale import (
    LETTERS,
    Shade,
    Thresholds,
    check_thresholds,
    intensity,
    shade_of,
)

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
