"""The installation drawn from its record: elevation and plan, to scale, as documented and as proposed."""
