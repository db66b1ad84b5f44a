"""Rules: pure functions from a day's articles to requirements, each with its working."""
