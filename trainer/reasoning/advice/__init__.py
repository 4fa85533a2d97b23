"""What a test tells for its minutes, which test or repair comes next, and the best path."""
