package org.halflight.record;

/**
 * Is told of every write to the record, on the thread that writes and in the middle of it. Should
 * return soon; what it throws before {@link Point#COMMITTED} undoes the write.
 */
@FunctionalInterface
public interface CommitListener {
  /** How far a write has come. */
  enum Point {
    /** The transaction has begun; nothing is written. */
    BEGUN,
    /** All is written; nothing is kept yet. */
    WRITTEN,
    /** All is kept. */
    COMMITTED
  }

  /** Nobody is told. */
  CommitListener NONE = point -> {};

  /** A write has come this far. */
  void at(Point point);
}
