"""Values are sets: intervals, regions, sets of names, days, with their arithmetic and their algebra."""
