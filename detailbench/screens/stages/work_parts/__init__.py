"""What the cards of trials, work and handover are put together from."""
