"""What to believe after evidence, what a finding is worth, and the misconception behind a wrong one."""
