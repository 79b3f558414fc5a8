package org.halflight.desk.view;

/**
 * A sentence to the person.
 *
 * @param kind how much it matters
 * @param text whole sentences
 */
public record Message(Kind kind, String text) {
  /** How much a sentence matters. */
  public enum Kind {
    /** News that go by. */
    NEWS,
    /** Something to look at. */
    ATTENTION,
    /** Something went wrong around the program. */
    TROUBLE
  }
}
