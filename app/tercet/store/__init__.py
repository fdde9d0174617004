"""A runner's store: one SQLite file, the original files, a lock; the only place with SQL."""
