package org.halflight.session;

/** A setting that is tried and has no marked time to be held against. */
public enum Check {
  /** Open for as long as the release is held. */
  B("B"),
  /** Open from one press to the next. */
  T("T"),
  /** Released by the self-timer, at any speed. */
  SELF_TIMER("self-timer"),
  /** Wound and released, at any speed, to set the linkage between film advance and release. */
  WIND_AND_RELEASE("wind and release");

  private final String label;

  Check(String label) {
    this.label = label;
  }

  /** As it is shown. */
  public String label() {
    return label;
  }
}
