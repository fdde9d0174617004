"""Says what a session's shading was made from, and what was remarked."""

from __future__ import annotations

from collections import Counter

from tercet.engine import Evidence
from tercet.language import mark, several, tr
from tercet.library.season import SessionDetail
from tercet.library.views import SessionView
from tercet.ui import words

BY_KNOWN = mark("Paces, and times or distances not written, by boundaries from {source}.")
BY_ESTIMATED = mark(
    "Paces, and times or distances not written, by estimated boundaries from {source}."
)
WITHIN = (
    mark("easy {low} to {high}"), mark("moderate {low} to {high}"), mark("hard {low} to {high}"),
)  # fmt: skip


def made_from_words(session: SessionView, detail: SessionDetail) -> str:
    """Say what a session's shading was made from, and what was remarked."""
    parts = []
    if session.sport != "running":
        parts.append(tr("Not counted as running, so not judged."))
    elif detail.by_words:
        parts.append(tr("Shaded by the words of the diary."))
        if detail.thresholds is not None:
            said = BY_ESTIMATED if detail.estimated else BY_KNOWN
            parts.append(tr(said, source=detail.threshold_words))
    elif detail.thresholds is None:
        parts.append(tr("Not judged: there are no thresholds yet."))
    else:
        parts += _shaded_by(detail)
        said = mark("Boundaries from {source}.")
        if detail.estimated:
            said = mark("Boundaries estimated from {source}.")
        parts.append(tr(said, source=detail.threshold_words))
    if session.sport == "running" and len(detail.intervals) == 3:
        parts.append(_within(detail))
    if detail.said:
        one, many = mark("{n} stretch as you said."), mark("{n} stretches as you said.")
        parts.append(several(detail.said, one, many))
    parts += detail.remarks
    if detail.damage:
        parts.append(detail.damage)
    if detail.file_name:
        parts.append(tr("File {name}.", name=detail.file_name))
    return " ".join(parts)


def _shaded_by(detail: SessionDetail) -> list[str]:
    """Say by which channels it was shaded, and of running power what it rests on."""
    by = Counter(detail.evidence)
    if not by[Evidence.POWER]:
        return [tr("Shaded by pace and heart rate.")]
    said = [tr("Shaded by pace and heart rate, and by running power where pace was missing.")]
    values = detail.thresholds
    if values is not None and not values.by_speed:
        said = [tr("Shaded by running power, as the thresholds hold no pace.")]
    elif not (by[Evidence.SPEED] or by[Evidence.BOTH]):
        said = [tr("Shaded by running power, as no pace was recorded.")]
    if values is not None and values.lt1_power and values.lt2_power:
        said.append(
            tr(
                "Power against {lt1} and {lt2} W, for {time}: meters differ, so this holds for "
                "the meter that these were found with.",
                lt1=f"{values.lt1_power:.0f}",
                lt2=f"{values.lt2_power:.0f}",
                time=words.duration(float(by[Evidence.POWER])),
            )
        )
    return said


def _within(detail: SessionDetail) -> str:
    """Say between what times each shade lies in 9 of 10 runs like this."""
    said = [
        tr(shade, low=words.hours(low), high=words.hours(high))
        for shade, (low, high) in zip(WITHIN, detail.intervals, strict=True)
        if high >= 30.0
    ]
    return tr("In 9 of 10 cases {shades}.", shades=words.listed(said)) if said else ""
