"""A class's results: collected, marked, summed, reported and exported."""
