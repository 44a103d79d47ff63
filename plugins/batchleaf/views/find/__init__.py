"""Finding old batches again: what can be chosen, the page, and the data that its script filters."""
