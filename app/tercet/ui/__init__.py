"""The screens; the only place with Qt."""
