"""What stays in the house, taken out before anything is written for somebody else."""
