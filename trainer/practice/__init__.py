"""What a learner does and how it is scored and reported: attempts, reports, the course, exercises."""
