"""The Thickness stage: gauge check, the walk from place to place, and what each panel shows."""
