"""What a learner works on: practice, lessons, exercises, sets; their progress and the glossary."""
