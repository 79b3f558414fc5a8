package org.halflight.desk.view;

/**
 * An adjustment, marked on the firing row.
 *
 * @param run the run in whose course it was done
 * @param afterFiring number of the last firing before it; 0 for none
 * @param words what was done
 */
public record AdjustingMark(int run, int afterFiring, String words) {}
