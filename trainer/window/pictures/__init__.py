"""What the drawn parts of screens show, as values: the engine, the strip of slots, curves, a circuit with its pins."""
