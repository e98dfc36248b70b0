"""Requirement by requirement: what is asked, what was recorded, what proves it, and the result."""
