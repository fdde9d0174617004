"""User actions over the store, long jobs, and the rows that screens draw; no Qt, no SQL."""

import os

# Arrays of one run are small: threads within a product of two only wait for each other, and on a
# busy machine for very long. Workers take this over, and this process if numpy comes later.
os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")
