package org.halflight.campaign;

/** What was thrown, in one line. */
final class Thrown {
  private Thrown() {}

  static String said(Throwable thrown) {
    StackTraceElement[] from = thrown.getStackTrace();
    return thrown.getClass().getSimpleName()
        + ": "
        + thrown.getMessage()
        + (from.length == 0 ? "" : " at " + from[0]);
  }
}
