"""The window: what is shown and what a key does is decided without pygame; only `drawing` and `app` know it."""
