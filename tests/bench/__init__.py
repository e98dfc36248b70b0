"""Benchmarks: ratios measured in one run against floors written here; nothing is asserted about time."""
