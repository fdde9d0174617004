"""The season review on the screen, on the wall and on paper."""
