"""The commands `practice`, `bench` and `progress`, which open the window or the terminal for one learner."""
