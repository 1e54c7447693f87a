"""What the documentation rests on: the sources' files, the passages quoted from them, and their digests."""
