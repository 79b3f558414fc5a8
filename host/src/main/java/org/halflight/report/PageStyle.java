package org.halflight.report;

/**
 * Which page is asked for.
 *
 * @param paper what it is printed on
 * @param bench whether the pages for the bench follow that for the owner
 * @param sale without the owner's name, complaint and the answer to it
 * @param from who it is from
 */
public record PageStyle(Paper paper, boolean bench, boolean sale, Workshop from) {
  /** The owner's page alone, from nobody who is named. */
  public static PageStyle owner(Paper paper) {
    return new PageStyle(paper, false, false, Workshop.NONE);
  }
}
