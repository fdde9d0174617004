"""'Why this shade?' for any second of a session: one sentence with its numbers."""

from __future__ import annotations

import math

from tercet.engine import Evidence, Shade
from tercet.library.season import SessionDetail
from tercet.ui import words

_SHADE = {
    Shade.EASY: "Easy",
    Shade.MODERATE: "Moderate",
    Shade.HARD: "Hard",
}


def why(detail: SessionDetail, second: int, units: words.Units = "km") -> str:
    """Say why a second of a session has its shade."""
    trace = detail.trace
    if not 0 <= second < len(trace.shades):
        return ""
    at = words.duration(float(second))
    shade = Shade(int(trace.shades[second]))
    evidence = Evidence(detail.evidence[second])
    if shade is Shade.NOT_RUNNING and evidence is Evidence.WORD:
        return f"{at}: left out, because you said so."
    if shade is Shade.NOT_RUNNING:
        return f"{at}: not running (standing, walking slowly, or the timer stood still)."
    if evidence is Evidence.WORD and detail.said:
        return f"{at}: {_SHADE[shade].lower()}, because you said so."
    if evidence is Evidence.WORD:
        return f"{at}: {_SHADE[shade].lower()} by what you wrote; nothing was measured."
    values = detail.thresholds
    if shade is Shade.UNJUDGED or values is None:
        return f"{at}: not judged, for there are no thresholds or no speed and heart rate here."
    about = "about " if detail.estimated else ""
    beats = float(trace.heart_rate[second])
    level = float(trace.level_speed[second])
    heart = "" if math.isnan(beats) else f"; heart rate {beats:.0f} /min"
    if evidence is Evidence.HEART_RATE and values.lt1_hr and values.lt2_hr:
        return (
            f"{at}: {_SHADE[shade].lower()} by heart rate alone, {beats:.0f} /min with its lag "
            f"undone, against {about}{values.lt1_hr:.0f} and {about}{values.lt2_hr:.0f}."
        )
    if values.lt1_speed and values.lt2_speed and not math.isnan(level):
        lt1 = f"{about}{words.bare_pace(values.lt1_speed, units)}"
        lt2 = f"{about}{words.bare_pace(values.lt2_speed, units)}"
        alone, against = Shade.MODERATE, f"between {lt1} and {lt2}"
        if level < values.lt1_speed:
            alone, against = Shade.EASY, f"slower than {lt1}"
        elif level >= values.lt2_speed:
            alone, against = Shade.HARD, f"faster than {lt2}"
        paced = f"{words.pace(level, units)} on level ground"
        if alone is not shade:
            weighed = "heart rate and the running around it" if heart else "the running around it"
            return (
                f"{at}: {_SHADE[shade].lower()}. Its pace alone, {paced}, would be "
                f"{_SHADE[alone].lower()} ({against}); weighed with {weighed} it is more likely "
                f"{_SHADE[shade].lower()}{heart}{_sure(detail, second)}."
            )
        beside = {Evidence.BOTH: ", borne out by heart rate", Evidence.POWER: ", by running power"}
        moved = beside.get(evidence, "")
        sure = _sure(detail, second)
        return f"{at}: {_SHADE[shade].lower()}, {paced}, {against}{moved}{heart}{sure}."
    return f"{at}: {_SHADE[shade].lower()}{heart}."


def _sure(detail: SessionDetail, second: int) -> str:
    """How sure the shade is, where that was weighed."""
    if second >= len(detail.probability) or not detail.probability[second]:
        return ""
    return f"; {min(99, math.floor(100.0 * detail.probability[second])):d} % sure"
