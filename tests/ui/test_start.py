"""What the start may load before the first picture, and what that picture shows."""

from __future__ import annotations

import subprocess
import sys

HEAVY = ("numpy", "pandas", "pyqtgraph", "multiprocessing", "fitdecode", "lark")


def test_the_window_and_the_store_load_nothing_heavy() -> None:
    asked = (
        "import sys; import tercet.__main__, tercet.library.library, tercet.ui.application; "
        f"print([name for name in {HEAVY!r} if name in sys.modules])"
    )
    done = subprocess.run([sys.executable, "-c", asked], check=True, capture_output=True, text=True)
    assert done.stdout.strip() == "[]"
