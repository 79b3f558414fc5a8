/**
 * The calibration of one rig as a value: what to correct, how sure it is, where it holds. It knows
 * nothing of how it was found.
 */
package org.halflight.profile;
