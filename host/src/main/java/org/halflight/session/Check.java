package org.halflight.session;

/** A setting without a time: it opens, holds and closes or it does not, and has no tolerance. */
public enum Check {
  /** Open for as long as the release is held. */
  B,
  /** Open from one press to the next. */
  T
}
