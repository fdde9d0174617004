"""'Why this shade?' for any second of a session: one sentence with its numbers."""

from __future__ import annotations

import math

from tercet.engine import Evidence, Shade
from tercet.language import mark, tr
from tercet.library.season import SessionDetail
from tercet.ui import words

_SHADE = {
    Shade.EASY: mark("easy"),
    Shade.MODERATE: mark("moderate"),
    Shade.HARD: mark("hard"),
}


_WEIGHED = mark(
    "{at}: {shade}. Its pace alone, {pace}, would be {alone} ({against}); "
    "weighed with the running around it, it is more likely {shade}"
)
_WEIGHED_WITH_HEART = mark(
    "{at}: {shade}. Its pace alone, {pace}, would be {alone} ({against}); "
    "weighed with heart rate and the running around it, it is more likely {shade}"
)
_BY_PACE = mark("{at}: {shade}, {pace}, {against}")
_BESIDE = {
    Evidence.BOTH: mark("{at}: {shade}, {pace}, {against}, borne out by heart rate"),
    Evidence.POWER: mark("{at}: {shade}, {pace}, {against}, by running power"),
}


_BY_POWER = mark("{at}: {shade} by running power, {watts} W against {lt1} and {lt2} W")
_WEIGHED_POWER = mark(
    "{at}: {shade} by running power, {watts} W against {lt1} and {lt2} W, weighed with the "
    "running around it"
)


def why(detail: SessionDetail, second: int, units: words.Units = "km") -> str:
    """Say why a second of a session has its shade."""
    trace = detail.trace
    if not 0 <= second < len(trace.shades):
        return ""
    at = words.duration(float(second))
    shade = Shade(int(trace.shades[second]))
    evidence = Evidence(detail.evidence[second])
    if shade is Shade.NOT_RUNNING and evidence is Evidence.WORD:
        return tr("{at}: left out, because you said so.", at=at)
    if shade is Shade.NOT_RUNNING:
        return tr("{at}: not running (standing, walking slowly, or the timer stood still).", at=at)
    judged = tr(_SHADE[shade]) if shade in _SHADE else ""
    if evidence is Evidence.WORD and detail.said:
        return tr("{at}: {shade}, because you said so.", at=at, shade=judged)
    if evidence is Evidence.WORD:
        return tr("{at}: {shade} by what you wrote; nothing was measured.", at=at, shade=judged)
    values = detail.thresholds
    if shade is Shade.UNJUDGED or values is None:
        return tr(
            "{at}: not judged, for there are no thresholds or no speed and heart rate here.", at=at
        )

    def guessed(value: str) -> str:
        return tr("about {value}", value=value) if detail.estimated else value

    beats = float(trace.heart_rate[second])
    level = float(trace.level_speed[second])
    heart = "" if math.isnan(beats) else tr("heart rate {beats} /min", beats=f"{beats:.0f}")
    power = float(trace.power[second]) if len(trace.power) else math.nan
    watts = "" if math.isnan(power) else tr("running power {watts} W", watts=f"{power:.0f}")
    if evidence is Evidence.HEART_RATE and values.lt1_hr and values.lt2_hr:
        return tr(
            "{at}: {shade} by heart rate alone, {beats} /min with its lag undone, "
            "against {lt1} and {lt2}.",
            at=at,
            shade=judged,
            beats=f"{beats:.0f}",
            lt1=guessed(f"{values.lt1_hr:.0f}"),
            lt2=guessed(f"{values.lt2_hr:.0f}"),
        )
    if evidence is Evidence.POWER and watts and values.lt1_power and values.lt2_power:
        alone = Shade(int(power >= values.lt1_power) + int(power >= values.lt2_power))
        found = tr(
            _BY_POWER if alone is shade else _WEIGHED_POWER,
            at=at,
            shade=judged,
            watts=f"{power:.0f}",
            lt1=guessed(f"{values.lt1_power:.0f}"),
            lt2=guessed(f"{values.lt2_power:.0f}"),
        )
        return _told(found, heart, _sure(detail, second))
    if values.lt1_speed and values.lt2_speed and not math.isnan(level):
        lt1 = guessed(words.bare_pace(values.lt1_speed, units))
        lt2 = guessed(words.bare_pace(values.lt2_speed, units))
        alone, against = Shade.MODERATE, tr("between {lt1} and {lt2}", lt1=lt1, lt2=lt2)
        if level < values.lt1_speed:
            alone, against = Shade.EASY, tr("slower than {pace}", pace=lt1)
        elif level >= values.lt2_speed:
            alone, against = Shade.HARD, tr("faster than {pace}", pace=lt2)
        paced = tr("{pace} on level ground", pace=words.pace(level, units))
        if alone is not shade:
            found = tr(
                _WEIGHED_WITH_HEART if heart else _WEIGHED,
                at=at,
                shade=judged,
                pace=paced,
                alone=tr(_SHADE[alone]),
                against=against,
            )
            return _told(found, heart, watts, _sure(detail, second))
        found = tr(
            _BESIDE.get(evidence, _BY_PACE), at=at, shade=judged, pace=paced, against=against
        )
        return _told(found, heart, watts, _sure(detail, second))
    return _told(tr("{at}: {shade}", at=at, shade=judged), heart, watts)


def _told(*parts: str) -> str:
    """A sentence of what was found and the figures behind it."""
    return "; ".join(filter(None, parts)) + "."


def _sure(detail: SessionDetail, second: int) -> str:
    """How sure the shade is, where that was weighed."""
    if second >= len(detail.probability) or not detail.probability[second]:
        return ""
    sure = min(99, math.floor(100.0 * detail.probability[second]))
    return tr("{percent} % sure", percent=sure)
