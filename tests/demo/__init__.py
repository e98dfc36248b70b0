"""The demo job's photos: drawn by a program, because the house is invented."""
