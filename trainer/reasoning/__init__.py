"""From evidence to belief, points and reasons."""
