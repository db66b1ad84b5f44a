"""The whole program on seeded days, held against the second opinion of ``tests.oracle``."""
