"""Nodes, their layout, the keyboard's focus, digits, colours: everything general, knowing nothing of injectors."""
