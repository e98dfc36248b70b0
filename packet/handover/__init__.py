"""What leaves the office: a copy of a packet as one zip, with a note that says how to open it."""
