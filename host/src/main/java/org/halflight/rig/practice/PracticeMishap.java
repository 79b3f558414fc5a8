package org.halflight.rig.practice;

/** What is to go wrong at a firing of the practice rig. All of it is invented. */
public enum PracticeMishap {
  /** Nothing but what the model shutter does by itself. */
  NONE,
  /** The blades open and stay open until somebody closes them. */
  HANG,
  /** The blades open a second time by themselves. */
  DOUBLE,
  /** The second curtain catches the first up within the frame; nothing to a leaf shutter. */
  CAPPED,
  /** The second curtain stops within the frame until it is wound; nothing to a leaf shutter. */
  STOPS_SHORT
}
