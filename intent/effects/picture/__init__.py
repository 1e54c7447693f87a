"""What a proposal does to the picture: its size, its shape, what it is made of, which way up it is seen."""
