"""Mutation testing of rules, wll and judge; run by hand, see ``__main__``."""
