"""Loan packages: out as a bag with all that goes along, in from anybody, checked before it is believed."""
