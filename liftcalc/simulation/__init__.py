"""What chance does at the loading point and at a count, and how a line fills and empties."""
