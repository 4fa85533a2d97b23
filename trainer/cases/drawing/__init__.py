"""Cases drawn at random or for practice, and what makes one hard."""
