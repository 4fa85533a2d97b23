"""Short questions on one skill each: drawn by a seed, answered by the model itself, with a reason for every choice."""
