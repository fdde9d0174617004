"""What a process keeps of the memory that it needs no more."""

from __future__ import annotations

import subprocess
import sys

import pytest

KEPT = """
import sys
from pathlib import Path
import numpy as np
from tercet.library import memory

def resident():
    return int(Path("/proc/self/statm").read_text("ascii").split()[1]) * 4096

if sys.argv[1:]:
    memory.give_back()
larger = np.ones(2**20)
del larger  # from now on glibc would keep what is smaller
before = resident()
arrays = [np.ones(2**18) for _ in range(30)]
del arrays[:-1]
print((resident() - before) >> 20)
"""


@pytest.mark.skipif(sys.platform != "linux", reason="of the C library of Linux")
def test_large_arrays_are_given_back() -> None:
    told = subprocess.run(
        [sys.executable, "-c", KEPT, "give"], capture_output=True, check=True, text=True
    )
    assert int(told.stdout) < 8  # of 60 MB, all but 2 of them done with
