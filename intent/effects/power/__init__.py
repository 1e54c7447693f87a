"""What a proposal takes from the mains, gives off as heat, and wears out."""
