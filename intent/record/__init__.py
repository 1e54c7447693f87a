"""The record: RDF validated with SHACL, in canonical form, and loaded into typed objects."""
