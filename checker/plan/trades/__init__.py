"""What a plan may say of each trade's work, one module a trade."""
