"""What every screen runs in: the stack of screens, keys and clicks, sound, long work, notices, small questions."""
