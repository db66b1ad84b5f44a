"""The independent judgement: every plan re-checked from its pieces, by code that never solves."""
