/**
 * The one way out for files that people name: what they may replace, and how they come into place;
 * and the log of faults.
 */
package org.halflight.files;
