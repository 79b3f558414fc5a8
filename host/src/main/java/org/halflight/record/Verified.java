package org.halflight.record;

import java.util.List;

/**
 * What looking through a whole record came to.
 *
 * @param entries how many entries were looked at
 * @param firings how many firings of session files were held against it
 * @param lines what is wrong and what was done about it, a sentence each
 * @param inOrder whether nothing is wrong any more
 */
public record Verified(int entries, int firings, List<String> lines, boolean inOrder) {
  public Verified {
    lines = List.copyOf(lines);
  }
}
