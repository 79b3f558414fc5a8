/**
 * How sure a mean is: every part of its uncertainty in one budget after JCGM 100:2008 (the guide to
 * the expression of uncertainty in measurement), with and without a calibrated rig.
 */
package org.halflight.uncertainty;
