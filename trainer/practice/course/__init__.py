"""What practice adapts by: skills, what each answer tells of them, what is to be revisited, what comes next."""
