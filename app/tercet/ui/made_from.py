"""Says what a session's shading was made from, and what was remarked."""

from __future__ import annotations

from tercet.library.season import SessionDetail
from tercet.library.views import SessionView
from tercet.ui import words


def made_from_words(session: SessionView, detail: SessionDetail) -> str:
    """Say what a session's shading was made from, and what was remarked."""
    parts = []
    if session.sport != "running":
        parts.append("Not counted as running, so not judged.")
    elif detail.by_words:
        about = "estimated " if detail.estimated else ""
        parts.append("Shaded by the words of the diary.")
        if detail.thresholds is not None:
            parts.append(
                f"Paces, and times or distances not written, by {about}boundaries from "
                f"{detail.threshold_words}."
            )
    elif detail.thresholds is None:
        parts.append("Not judged: there are no thresholds yet.")
    else:
        about = "estimated " if detail.estimated else ""
        parts.append(
            f"Shaded by pace and heart rate. Boundaries {about}from {detail.threshold_words}."
        )
    if session.sport == "running" and len(detail.intervals) == 3:
        parts.append(_within(detail))
    if detail.said:
        stretches = "1 stretch" if detail.said == 1 else f"{detail.said} stretches"
        parts.append(f"{stretches} as you said.")
    parts += detail.remarks
    if detail.damage:
        parts.append(detail.damage)
    if detail.file_name:
        parts.append(f"File {detail.file_name}.")
    return " ".join(parts)


def _within(detail: SessionDetail) -> str:
    """Say between what times each shade lies in 9 of 10 runs like this."""
    said = [
        f"{name} {words.hours(low)} to {words.hours(high)}"
        for name, (low, high) in zip(("easy", "moderate", "hard"), detail.intervals, strict=True)
        if high >= 30.0
    ]
    return f"In 9 of 10 cases {words.listed(said)}." if said else ""
