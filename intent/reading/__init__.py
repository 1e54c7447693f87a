"""Files, a work with its sources, a proposal beside its work: read at the edge, then plain data."""
