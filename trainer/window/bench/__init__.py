"""The bench for one case: hearing, engine work, probing, finding, repair, debrief; the free bench too."""
