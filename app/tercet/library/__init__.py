"""User actions over the store, long jobs, and the rows that screens draw; no Qt, no SQL."""
