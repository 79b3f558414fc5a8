package org.halflight.desk;

/** Something that is drawn in the colours of a look. */
interface LookListener {
  /** The look is another. */
  void look(Look look);
}
