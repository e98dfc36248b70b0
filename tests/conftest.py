"""Settings every test shares."""

from hypothesis import settings

# A loaded machine must not turn a slow first example into a failure.
settings.register_profile("packet", deadline=None)
settings.load_profile("packet")
