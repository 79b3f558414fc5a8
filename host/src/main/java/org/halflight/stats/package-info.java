/**
 * Statistics of repeated firings that no library has right: a sample at one speed, two samples
 * before and after, and how many firings would decide. Plain doubles, in stops or in seconds as the
 * caller keeps them; whatever comes out has the unit that went in. Formulas from published sources;
 * distributions from Commons Math.
 */
package org.halflight.stats;
