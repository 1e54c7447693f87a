"""A second way to every verdict: small works, judged by counting out points."""
