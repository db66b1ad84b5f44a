"""Purchases: what to buy so that loads are ready, at the least cost."""
