"""The plain-text face: the same attempt with nothing but a keyboard."""
