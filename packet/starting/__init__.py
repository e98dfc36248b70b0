"""Beginning: the folder of an office, and the record of a new job."""
