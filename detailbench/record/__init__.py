"""How it is kept: tables, pictures, journal, evidence, lock, migrations."""
