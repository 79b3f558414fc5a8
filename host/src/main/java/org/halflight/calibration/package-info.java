/**
 * Makes the profile of a rig: the rate of its clock, the delays and the lag of its front end, the
 * rig check, and the study of the gauge. Formulas from published sources.
 */
package org.halflight.calibration;
