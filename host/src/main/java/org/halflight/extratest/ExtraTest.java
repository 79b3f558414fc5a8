package org.halflight.extratest;

import java.util.List;
import java.util.Optional;
import org.halflight.job.CheckItem;
import org.halflight.job.CheckState;
import org.halflight.session.Phase;

/**
 * One thing that was tried beside the marked speeds, as it came out over a run. The words, the
 * picture, the page, the hand-back list and the table are made from it.
 */
public interface ExtraTest {
  /** What was tried, in tables and in the names of sentences: lower case with hyphens. */
  String what();

  /** How the camera was set for it, where a result in one setting says nothing about another. */
  default String setting() {
    return "";
  }

  /** Counts the runs of the session from 1; 0 before one was begun. */
  int run();

  /** Where in the work it was tried. */
  Optional<Phase> phase();

  /** The item of the hand-back list that it answers. */
  CheckItem item();

  /** How it was found; not tested where what was measured does not suffice to say. */
  CheckState state();

  /**
   * What was left out that its item wants too before it is in order, such as the T of B and T: the
   * names of sentences under {@code everyday.lacks}; none where it suffices.
   */
  default List<String> lacks() {
    return List.of();
  }

  /** What was measured, in the order in which it is to be read. */
  List<ExtraTestValue> values();
}
