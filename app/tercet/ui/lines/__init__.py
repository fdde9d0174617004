"""The thresholds page: history, tests, what recordings tell, and what a change would do."""
