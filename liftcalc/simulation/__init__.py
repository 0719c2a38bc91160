"""What chance does at the loading point and at a count."""
