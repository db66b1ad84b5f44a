"""The planner: assemblies, the integer program of the whole day, its staged solve."""
