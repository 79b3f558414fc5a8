package org.halflight.link;

/** How things stand between a host and its rig. */
public enum LinkState {
  /** No rig was found yet. */
  SEARCHING,
  /** The rig answers, for the first time. */
  CONNECTED,
  /** The rig that was connected no longer answers and is looked for: its last figures are old. */
  LOST,
  /** The same rig answers again, perhaps under another port name. */
  BACK
}
