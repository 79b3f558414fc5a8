package org.halflight.shuttermodel;

import org.halflight.shuttermodel.ModelContact.What;

/** Ready flash contacts for practice and validation. All of them are invented. */
public enum InventedContact {
  /** In time at every speed at which the blades open fully. */
  PROMPT(What.CLOSES, 0.1, 0, 0),
  /** Prompt, and bounces a few times, as contacts do. */
  BOUNCING(What.CLOSES, 0.1, 0.02, 3),
  /** Prompt, and bounces ten times. */
  TEN_BOUNCES(What.CLOSES, 0.1, 0.02, 10),
  /**
   * Bent: it closes so long after fully open that the blades already close at the fastest speed and
   * not yet at the next slower one.
   */
  LATE(What.CLOSES, 1.9, 0.05, 1),
  /** Closes a little before the blades are fully open. */
  EARLY(What.CLOSES, -0.6, 0.03, 0),
  /** Set for flash bulbs that want to be lit 16 ms before. */
  FOR_BULBS(What.CLOSES, -16, 0.3, 0),
  /** Its spring is loose: a hundred times a second, without end. */
  CHATTERS(What.CHATTERS, 0.1, 0.02, 0),
  /** Its wire is broken. */
  NEVER_CLOSES(What.NEVER, 0, 0, 0),
  /** It is shorted. */
  ALWAYS_CLOSED(What.ALWAYS_CLOSED, 0, 0, 0);

  private static final double BOUNCE_MILLIS = 0.04;
  private static final double CHATTER_MILLIS = 10;

  private final What what;
  private final double afterOpenMillis;
  private final double scatterMillis;
  private final int bounces;

  InventedContact(What what, double afterOpenMillis, double scatterMillis, int bounces) {
    this.what = what;
    this.afterOpenMillis = afterOpenMillis;
    this.scatterMillis = scatterMillis;
    this.bounces = bounces;
  }

  /** What it does. */
  public ModelContact model() {
    return new ModelContact(
        what,
        afterOpenMillis,
        scatterMillis,
        bounces,
        what == What.CHATTERS ? CHATTER_MILLIS : BOUNCE_MILLIS);
  }
}
