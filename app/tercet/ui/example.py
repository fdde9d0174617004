"""Opens the example season in a window and a store of its own, beside the runner's window."""

from __future__ import annotations

import sys


def start() -> None:
    """Start the program once more, on the example; it outlives this window."""
    import subprocess

    subprocess.Popen([sys.executable, "-m", "tercet", "--demo"], start_new_session=True)
