"""Drawn photos of demo job 26-067: a house in snow country whose back slope is being mended."""
