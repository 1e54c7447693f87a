"""What leaves the house and what comes in: other standards, and the loan package."""
