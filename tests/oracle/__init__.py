"""A second opinion: reads a day and its results with code of its own and works both out again.

Nothing in this folder imports the package it judges. It is written to be read, not to be fast:
one small exact reader, the published tables typed again, the rules in plain arithmetic, a plain
integer program for the optimum, and an exhaustive search for very small days.
"""
