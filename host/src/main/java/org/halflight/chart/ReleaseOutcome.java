package org.halflight.chart;

/** What came of a release. */
public enum ReleaseOutcome {
  /** An exposure with an effective time. */
  TIMED("timed"),
  /** Stayed open until it was closed by hand or by itself much later. */
  STUCK_OPEN("stuck open"),
  /** No light at all. */
  DID_NOT_OPEN("did not open"),
  /** The blades let light through while the shutter was cocked. */
  LIGHT_WHILE_COCKING("light while cocking"),
  /** Opened, but not fully: only bounds are known. */
  NEVER_FULLY_OPEN("never fully open"),
  /** Opened and closed, but edges and light curve gave no time. */
  NOTHING_DECIDES("no time yet"),
  /** Opened twice. */
  DOUBLE("double"),
  /** Light that no shutter made. */
  NOT_A_SHUTTER_EVENT("not a shutter event");

  private final String words;

  ReleaseOutcome(String words) {
    this.words = words;
  }

  /** The outcome in words. */
  public String words() {
    return words;
  }
}
