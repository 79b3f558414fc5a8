/**
 * Pictures of measurements, each with a table that says the same in words. Input is plain records,
 * output a chart for the screen or an image; errors are in stops, above zero is slow. Needs no
 * screen.
 *
 * <p>Colours are those of Okabe and Ito ('Color Universal Design', 2008), and colour never carries
 * a meaning alone: shape, filling, place or hatching says the same.
 */
package org.halflight.chart;
