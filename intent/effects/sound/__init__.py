"""What a proposal does to what is heard: how loud it is, beside which noise, and how long after the picture."""
