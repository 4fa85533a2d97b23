"""All hypotheses about an engine, what can be asked of it, and what each hypothesis expects."""
