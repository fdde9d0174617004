"""Tercet: a season tracker that judges every second of running easy, moderate or hard."""

__version__ = "0.1.0"
