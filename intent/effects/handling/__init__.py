"""What a proposal asks of those who carry and place it: weights, floors, doors, room to stand."""
