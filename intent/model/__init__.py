"""What a record says, as frozen data: works, installations, instructions. No input, no output."""
