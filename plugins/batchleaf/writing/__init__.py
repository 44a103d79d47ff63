"""What commands write into an archive, where the maker asked for it."""
