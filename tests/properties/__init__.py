"""What must always hold, each held by a property test: section 7 of the design, one module a property or two."""
