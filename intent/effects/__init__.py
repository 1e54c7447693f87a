"""What a proposal does to what visitors see and hear, to the devices, and to the venue."""
