"""Says what a session's shading was made from, and what was remarked."""

from __future__ import annotations

from tercet.library.season import SessionDetail
from tercet.library.views import SessionView


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
    parts += detail.remarks
    if detail.damage:
        parts.append(detail.damage)
    if detail.file_name:
        parts.append(f"File {detail.file_name}.")
    return " ".join(parts)
