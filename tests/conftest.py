"""What holds for every test."""

from hypothesis import settings

# A busy machine is no failure: speed is measured in benchmarks, never in a test.
settings.register_profile("no deadline", deadline=None)
settings.load_profile("no deadline")
