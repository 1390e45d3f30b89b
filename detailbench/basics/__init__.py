"""Ground floor: units, numbers, clock, errors, workings, texts, and where the resources lie."""
