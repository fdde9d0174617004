"""The page on which a paper log is typed, understood beside it, and kept."""
