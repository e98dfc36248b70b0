"""Drawings as SVG text, made from the geometry of a packet's copy and from nothing else."""
