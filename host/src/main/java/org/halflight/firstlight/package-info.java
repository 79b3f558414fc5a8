/**
 * First light of a rig that was just built: which steps there are, what each wants to see, and what
 * to check where it does not. Pure: what the rig says goes in, what a step has seen comes out.
 */
package org.halflight.firstlight;
