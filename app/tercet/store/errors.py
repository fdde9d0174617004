"""What can go wrong with the store, in words for the person at the screen."""


class StoreError(Exception):
    """A disk, lock or damage problem: the text is shown as it is."""


class StoreBusy(StoreError):
    """Another running copy of the program holds the store."""
