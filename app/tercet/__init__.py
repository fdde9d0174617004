"""Tercet: a season tracker that judges every second of running easy, moderate or hard."""

import os

# The engine's matrices are small: a second thread for each costs twice the time that it saves, and
# ten times where worker processes share the processors. Takes effect before numpy is loaded.
os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")

__version__ = "0.1.0"
