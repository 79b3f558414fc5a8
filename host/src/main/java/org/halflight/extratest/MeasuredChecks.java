package org.halflight.extratest;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.halflight.job.CheckItem;
import org.halflight.job.CheckState;
import org.halflight.job.Checklist;
import org.halflight.session.Phase;

/**
 * The answers of a list that were measured. What the person answered by hand stands; an answer that
 * was measured fills a place that the person left open, and is marked as measured.
 */
public final class MeasuredChecks {
  /** Where an answer comes from. */
  public enum Origin {
    /** The person gave it, and nothing was measured. */
    BY_HAND,
    /** It was measured, and the person said nothing. */
    MEASURED,
    /** The person gave it, and it was measured too and came to the same. */
    BOTH,
    /** The person gave it, and what was measured says otherwise. */
    DISAGREES
  }

  /**
   * An answer to an item.
   *
   * @param state what holds: the person's answer where there is one
   * @param measured what was measured; not tested where nothing was, or too little to call it in
   *     order
   * @param by the things that were tried and say so
   * @param lacks what was not tried and would have to be in order too: names of sentences under
   *     {@code everyday.lacks}; none where nothing was tried, or where there is a fault anyway
   */
  public record Answer(
      CheckState state,
      Origin origin,
      CheckState measured,
      List<ExtraTest> by,
      List<String> lacks) {
    public Answer {
      by = List.copyOf(by);
      lacks = List.copyOf(lacks);
    }

    /** Whether something was measured, and found in order, but not all that it takes. */
    public boolean isPartly() {
      return !lacks.isEmpty();
    }
  }

  /**
   * What has to be in order together before an item is, where one kind of thing says too little.
   * That shut blades are to keep light out at rest and after closing alike: L. P. Clerc,
   * Photography, Theory and Practice, sect. 139.
   */
  private static final Map<CheckItem, List<String>> TOGETHER =
      Map.of(CheckItem.BLADES, List.of("bounce", "light-leak"));

  private final Map<CheckItem, List<ExtraTest>> byItem = new EnumMap<>(CheckItem.class);

  private MeasuredChecks(List<ExtraTest> last) {
    last.stream()
        .filter(tried -> tried.state() != CheckState.NOT_TESTED)
        .forEach(tried -> byItem.computeIfAbsent(tried.item(), i -> new ArrayList<>()).add(tried));
  }

  /**
   * What was found when the camera came in: of each thing, in each setting, the first run as found
   * that tried it.
   *
   * @param tried in order
   */
  public static MeasuredChecks intake(List<ExtraTest> tried) {
    Map<String, ExtraTest> first = new LinkedHashMap<>();
    tried.stream()
        .filter(each -> each.phase().equals(Optional.of(Phase.AS_FOUND)))
        .forEach(each -> first.putIfAbsent(each.what() + each.setting(), each));
    return new MeasuredChecks(List.copyOf(first.values()));
  }

  /**
   * What was found before the camera goes back: of each thing, in each setting, the last run that
   * is not as found.
   *
   * @param tried in order
   */
  public static MeasuredChecks handBack(List<ExtraTest> tried) {
    Map<String, ExtraTest> last = new LinkedHashMap<>();
    tried.stream()
        .filter(each -> !each.phase().equals(Optional.of(Phase.AS_FOUND)))
        .forEach(each -> last.put(each.what() + each.setting(), each));
    return new MeasuredChecks(List.copyOf(last.values()));
  }

  /** The answer to an item of a list that a person may have filled in. */
  public Answer answer(CheckItem item, Checklist byHand) {
    return answer(item, byHand.of(item).state());
  }

  /** The answer to an item that a person answered, or left as not tested. */
  public Answer answer(CheckItem item, CheckState said) {
    List<ExtraTest> by = byItem.getOrDefault(item, List.of());
    boolean fault = by.stream().anyMatch(tried -> tried.state() == CheckState.FAULT);
    List<String> lacks = by.isEmpty() || fault ? List.of() : lacks(item, by);
    if (!fault && (by.isEmpty() || !lacks.isEmpty())) {
      return new Answer(said, Origin.BY_HAND, CheckState.NOT_TESTED, by, lacks);
    }
    CheckState measured = fault ? CheckState.FAULT : CheckState.OK;
    if (said == CheckState.NOT_TESTED) {
      return new Answer(measured, Origin.MEASURED, measured, by, lacks);
    }
    return new Answer(said, said == measured ? Origin.BOTH : Origin.DISAGREES, measured, by, lacks);
  }

  private static List<String> lacks(CheckItem item, List<ExtraTest> by) {
    List<String> lacks = new ArrayList<>();
    by.forEach(tried -> lacks.addAll(tried.lacks()));
    TOGETHER.getOrDefault(item, List.of()).stream()
        .filter(what -> by.stream().noneMatch(tried -> tried.what().equals(what)))
        .forEach(lacks::add);
    return lacks;
  }

  /** The items that were measured. */
  public List<CheckItem> items() {
    return List.copyOf(byItem.keySet());
  }
}
