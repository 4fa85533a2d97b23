"""Reading and writing files safely: bounded, whole, every problem with its line."""
