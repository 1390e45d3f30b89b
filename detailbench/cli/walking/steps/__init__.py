"""The acts a walk script can name, one class a verb, a file per group."""
