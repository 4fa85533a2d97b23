"""One learner's run at one case: actions, their cost, the attempt as a pure step over events, the debrief."""
