"""A packet as it is being written: served to this machine's browser, and built again on change."""
