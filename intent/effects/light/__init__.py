"""What a proposal does to light: how bright the picture is, its white, and what light does to objects."""
