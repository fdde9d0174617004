"""How true the zone engine is, on simulated seasons whose every second is known.

``python -m tests.accuracy`` prints the table; it is a benchmark, not a test.
"""

from tests.accuracy.methods import METHODS, Judged, engine, streams_of, thresholds_of
from tests.accuracy.score import Score, score

__all__ = [
    "METHODS",
    "Judged",
    "Score",
    "engine",
    "score",
    "streams_of",
    "thresholds_of",
]
