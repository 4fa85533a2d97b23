"""One learner's run at one case: events, actions, and what they come to."""
