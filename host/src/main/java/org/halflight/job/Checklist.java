package org.halflight.job;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;

/**
 * A list of intake or hand-back: one answer an item. What was not answered is 'not tested'.
 *
 * @param findings every item with its answer, in the order of {@link CheckItem}
 */
public record Checklist(Map<CheckItem, Finding> findings) {
  /** A list on which nothing was tested. */
  public static final Checklist EMPTY = new Checklist(Map.of());

  public Checklist {
    Map<CheckItem, Finding> all = new EnumMap<>(CheckItem.class);
    for (CheckItem item : CheckItem.values()) {
      all.put(item, findings.getOrDefault(item, Finding.NOT_TESTED));
    }
    findings = Collections.unmodifiableMap(all);
  }

  /** The answer to an item. */
  public Finding of(CheckItem item) {
    return Objects.requireNonNull(findings.get(item));
  }

  /** The same list with another answer to one item. */
  public Checklist with(CheckItem item, CheckState state, String note) {
    Map<CheckItem, Finding> all = new EnumMap<>(findings);
    all.put(item, new Finding(state, note));
    return new Checklist(all);
  }
}
