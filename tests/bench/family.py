"""Memory of this process and all that it started, looked at from a process of its own."""

from __future__ import annotations

import os
import subprocess
import sys
from types import TracebackType

#: How often it is looked at. [s]
EVERY_S = 0.2
# In a process of its own, so that looking does not hold up what is looked at.
_WATCHER = """
import os, sys, time
def family(root):
    found, left = [], [root]
    while left:
        pid = left.pop(); found.append(pid)
        try:
            for task in os.listdir(f"/proc/{pid}/task"):
                left += map(int, open(f"/proc/{pid}/task/{task}/children").read().split())
        except OSError:
            pass
    return [pid for pid in found if pid != os.getpid()]
def share(pid):
    try:
        for line in open(f"/proc/{pid}/smaps_rollup"):
            if line.startswith("Pss:"):
                return int(line.split()[1])
    except OSError:
        pass
    return 0
peak, root = 0, int(sys.argv[1])
while os.getppid() == root:
    peak = max(peak, sum(map(share, family(root))))
    print(peak, flush=True)
    time.sleep(float(sys.argv[2]))
"""


class Family:
    """While it is entered: the peak of all processes together, shared pages counted once."""

    peak_mb = 0.0

    def __enter__(self) -> Family:
        self._watcher = subprocess.Popen(
            [sys.executable, "-c", _WATCHER, str(os.getpid()), str(EVERY_S)],
            stdout=subprocess.PIPE,
            text=True,
        )
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        self._watcher.terminate()
        assert self._watcher.stdout is not None
        self.peak_mb = int(self._watcher.stdout.read().split()[-1]) / 1024
        self._watcher.wait()
