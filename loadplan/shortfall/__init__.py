"""Why loads are held, and the ways out, each planned and judged."""
