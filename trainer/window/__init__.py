"""The window: `state/` decides what is shown and what a key does; everything here that draws knows pygame only."""
