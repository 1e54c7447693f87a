"""What follows from documentation: examined by itself, explained, compared, remembered, asked about."""
