"""The nouns of the outcome: tie-downs, stages, shortages, checks, and the plan of a day."""
