"""What a learner does and what it comes to: attempts, their reports, the course, exercises."""
