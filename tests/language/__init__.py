"""What the catalogues of other languages must hold, found in the source by Qt's own lupdate."""

from __future__ import annotations

import re
import subprocess
from pathlib import Path

import PySide6

ROOT = Path(__file__).parents[2]
CATALOGUES = ROOT / "resources" / "language"


def lupdate(catalogue: Path) -> None:
    """Add what the source says now to a catalogue, and drop what it no longer says."""
    tool = Path(PySide6.__file__).parent / "lupdate"
    if not tool.exists():
        tool = tool.with_suffix(".exe")
    sources = sorted(str(path) for path in (ROOT / "app" / "tercet").rglob("*.py"))
    done = subprocess.run(
        [
            tool, *sources, "-ts", catalogue, "-source-language", "en", "-locations", "none",
            "-no-obsolete", "-sort-messages", "-silent",
            "-tr-function-alias", "QT_TR_NOOP+=mark",
        ],
        capture_output=True, text=True, check=False, timeout=120,
    )  # fmt: skip
    if done.returncode:
        raise RuntimeError(done.stderr)
    # It takes what the source says of its constants for notes to the translator of the next text.
    text = re.sub(
        r"\s*<extracomment>.*?</extracomment>", "", catalogue.read_text("utf-8"), flags=re.S
    )
    catalogue.write_text(text, "utf-8", newline="\n")
