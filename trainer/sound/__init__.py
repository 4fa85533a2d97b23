"""From solved motion to calibrated audio: body, places, room, bed, timeline, levels, loudness."""
