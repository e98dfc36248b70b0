"""The takeoff: what the measured roof needs by rule, what to buy for it, and what was laid."""

from packet.figures.takeoff.lines import TakeoffLine, take_off

__all__ = ["TakeoffLine", "take_off"]
