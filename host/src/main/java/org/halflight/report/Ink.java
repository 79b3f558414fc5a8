package org.halflight.report;

import java.awt.Color;

/** The few colours of a page; all of it must survive a black and white printer. */
final class Ink {
  static final Color BLACK = new Color(0x1D2126);
  static final Color QUIET = new Color(0x565E67);
  static final Color LINE = new Color(0xC9CDD2);
  static final Color BAND = new Color(0xF1F3F5);
  static final Color STAMP = new Color(0x8A2B2B);

  private Ink() {}
}
