package org.halflight.chart;

import org.jfree.chart.JFreeChart;

/** A picture and its twin in words. Both are made from the same input and say the same. */
public interface Picture {
  /** A new chart in a theme; needs no screen. */
  JFreeChart chart(Theme theme);

  /** The same as a table, for screen readers and for those who want the numbers. */
  DataTable table();
}
