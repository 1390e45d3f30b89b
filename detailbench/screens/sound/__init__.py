"""The four sounds: made by us, played by what the computer has, silent where it has nothing."""
