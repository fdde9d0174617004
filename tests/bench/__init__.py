"""Benchmarks, apart from the tests: every figure is a ratio to a floor measured in the same run."""
