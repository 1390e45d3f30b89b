"""What a job's picture says once it is computed: pure functions from JobPicture to results with their workings."""
