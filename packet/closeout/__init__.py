"""The closeout: everything a packet says about one job, and the copy of it one reader may have."""
