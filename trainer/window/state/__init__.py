"""What the window shows and does, decided without pygame."""
