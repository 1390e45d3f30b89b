"""The pages below the stages: Jobs, Shop, History."""
