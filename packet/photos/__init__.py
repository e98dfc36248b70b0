"""Photos: the log, the facts in the originals, and the copies for the web."""
