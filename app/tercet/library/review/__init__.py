"""The season review: its pages as plain words, numbers and pictures; no Qt."""
