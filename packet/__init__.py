"""A job record in YAML becomes a closeout packet."""

__version__ = "0.1.0"
