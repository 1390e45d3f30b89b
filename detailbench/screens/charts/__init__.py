"""Charts. The only room that loads the chart library, and only when a chart is first opened."""
