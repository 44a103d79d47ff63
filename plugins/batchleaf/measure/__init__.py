"""Exact lengths, amounts, money and durations. Knows nothing of the rest."""
